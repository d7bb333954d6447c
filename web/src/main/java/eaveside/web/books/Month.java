package eaveside.web.books;

import eaveside.kernel.Money;
import eaveside.ledger.ReadVariances.Variance;
import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A month of the books, as its page and scripts see it.
 *
 * @param  closedAt  null while it is open
 * @param  closable  whether it is over, and the oldest that is open
 * @param  stillOpen what closing it leaves for later months
 */
public record Month(
        YearMonth month, @Nullable Instant closedAt, boolean closable, List<Variance> variances, StillOpen stillOpen) {
    /**
     * What is not finished of a month, to be seen before it closes. What is finished later posts into a later month.
     *
     * @param  visitsToSignOff    that were scheduled until its end and are not signed off
     * @param  visitsToDecide     completed, and their scope changes are not all decided
     * @param  visitsToBill       completed by its end, neither billed nor closed
     * @param  invoiceDrafts      for work of the month or before
     * @param  invoiceDraftsTotal what they come to, with tax
     * @param  goodsNotInvoiced   received by its end and not invoiced by the supplier, at cost; never below zero
     * @param  physicalCounts     posted in the month: without one, stock differences are in no month yet
     */
    public record StillOpen(
            long visitsToSignOff,
            long visitsToDecide,
            long visitsToBill,
            long invoiceDrafts,
            Money invoiceDraftsTotal,
            Money goodsNotInvoiced,
            long physicalCounts) {
        /** Whether everything is finished. */
        public boolean isNothing() {
            return visitsToSignOff + visitsToDecide + visitsToBill + invoiceDrafts == 0
                    && !goodsNotInvoiced.isPositive();
        }
    }
}
