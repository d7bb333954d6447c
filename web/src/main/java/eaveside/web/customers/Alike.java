package eaveside.web.customers;

import eaveside.customers.Duplicate.Because;
import eaveside.web.View;
import java.util.Collection;
import java.util.stream.Collectors;

/** What two customers have in common, in words. */
public final class Alike {
    private Alike() {}

    public static String because(View view, Collection<Because> because) {
        return because.stream()
                .sorted()
                .map(b -> view.t("customers.alike.because", b))
                .collect(Collectors.joining(", "));
    }
}
