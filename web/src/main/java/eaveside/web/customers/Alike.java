package eaveside.web.customers;

import eaveside.customers.Duplicate;
import eaveside.customers.Duplicate.Because;
import eaveside.web.View;
import java.util.Collection;
import java.util.List;
import java.util.stream.Collectors;

/** What two customers have in common, in words and for scripts. */
public final class Alike {
    private Alike() {}

    public static String because(View view, Collection<Because> because) {
        return because.stream()
                .sorted()
                .map(b -> view.t("customers.alike.because", b))
                .collect(Collectors.joining(", "));
    }

    /** @param  because PHONE, EMAIL or NAME_AND_ADDRESS */
    public record Other(String id, String name, List<String> because) {
        static Other of(Duplicate duplicate) {
            return new Other(duplicate.id().toString(), duplicate.name(), names(duplicate.because()));
        }
    }

    static List<String> names(Collection<Because> because) {
        return because.stream().sorted().map(Because::name).toList();
    }
}
