package eaveside.pricing;

import eaveside.kernel.Default;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Versioned;
import java.util.List;

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
        return Versioned.differencesWithin("list", list, ((PriceBookDraft) other).list());
    }
}
