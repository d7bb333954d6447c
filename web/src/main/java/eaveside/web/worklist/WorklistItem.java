package eaveside.web.worklist;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import java.time.LocalDate;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/**
 * One thing that waits. Its sentence is put into words only when it is shown, since most of what waits is not.
 *
 * @param  since    how long it has waited; a day to come where it is not due yet
 * @param  customer whom it is about; null for stock
 * @param  words    what it is, in words
 * @param  money    what is at stake; null where no money is
 * @param  link     where the next step is done
 * @param  next     the next step, as the key of the link's label
 */
public record WorklistItem(
        Type type,
        LocalDate since,
        @Nullable CustomerId customer,
        Supplier<String> words,
        @Nullable Money money,
        String link,
        String next) {
    /** What sort of thing; also the filters of the list. */
    public enum Type {
        SHEET,
        QUOTE,
        PLAN,
        BILL,
        DECIDE,
        MONEY,
        FINDING,
        STOCK
    }
}
