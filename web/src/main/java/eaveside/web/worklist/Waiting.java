package eaveside.web.worklist;

import eaveside.kernel.Money;
import java.time.LocalDate;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * One thing that waits.
 *
 * @param since    how long it has waited
 * @param sentence what it is, in words
 * @param money    what is at stake; null where no money is
 * @param link     where the next step is done
 * @param next     the next step, as the label of the link
 */
public record Waiting(
        Kind kind,
        LocalDate since,
        String sentence,
        @Nullable Money money,
        String link,
        String next) {
    /** What sort of thing; also the filters of the list. */
    public enum Kind {
        QUOTE,
        PLAN,
        BILL,
        DECIDE,
        MONEY,
        FINDING,
        STOCK;

        String inAddress() {
            return name().toLowerCase(Locale.ROOT);
        }
    }
}
