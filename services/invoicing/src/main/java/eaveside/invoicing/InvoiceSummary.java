package eaveside.invoicing;

import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * An invoice in a list.
 *
 * @param  open        balance due
 * @param  credited    taken back by a credit memo
 * @param  aging       of the balance due; null where nothing is due
 * @param  daysPastDue of the balance due; zero where it is current
 */
public record InvoiceSummary(
        InvoiceId id,
        long number,
        LocalDate date,
        LocalDate dueDate,
        CustomerId customer,
        String customerName,
        Money gross,
        Money open,
        boolean credited,
        Aging.@Nullable Bucket aging,
        long daysPastDue) {
    /** Whether something is due since before today. */
    public boolean isPastDue() {
        return daysPastDue > 0;
    }
}
