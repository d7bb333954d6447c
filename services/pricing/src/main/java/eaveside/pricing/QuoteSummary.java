package eaveside.pricing;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A quote in a list. */
public record QuoteSummary(
        QuoteId id,
        long number,
        QuoteStatus status,
        CustomerId customer,
        String customerName,
        SiteId site,
        String siteName,
        LocalDate date,
        LocalDate validUntil,
        @Nullable FindingId cameFrom,
        Money total) {
    /** Whether it has expired by that day. */
    public boolean isExpiredOn(LocalDate day) {
        return status.isOpen() && validUntil.isBefore(day);
    }
}
