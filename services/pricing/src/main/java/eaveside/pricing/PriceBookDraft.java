package eaveside.pricing;

import eaveside.kernel.Default;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Records;
import eaveside.kernel.Versioned;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A price book that is still being written; nothing is priced from it.
 *
 * @param  version the one that an edit starts from, so that two people cannot overwrite one another; 0 for a new draft
 */
public record PriceBookDraft(
        PriceBookId id, PriceList list, @Default("0") int version) implements Versioned {
    @Override
    public String what() {
        return "price book";
    }

    /** By the parts of the list. */
    @Override
    public List<String> differencesFrom(Versioned other) {
        Map<String, @Nullable Object> theirs = Records.values(((PriceBookDraft) other).list());
        List<String> names = new ArrayList<>();
        Records.values(list).forEach((name, value) -> {
            if (!Objects.equals(value, theirs.get(name))) {
                names.add(name);
            }
        });
        return names;
    }
}
