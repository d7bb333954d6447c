package eaveside.visits;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A visit as it stands.
 *
 * @param  priceBook pinned by its quote
 * @param  returnsTo the visit whose skipped work this one does
 * @param  completedOn    the day of the work, where a sheet is in force
 * @param  closing   the document that closed it without an invoice
 * @param  version   to be named by whoever changes it
 * @param  lines     the plan
 * @param  changes   oldest first
 * @param  warnings  about the plan: soap that a panel manufacturer forbids
 * @param  scopeChanges what the sheet in force did not do of the plan, or did beyond it
 */
public record Visit(
        VisitId id,
        CustomerId customer,
        SiteId site,
        @Nullable QuoteId quote,
        @Nullable PriceBookId priceBook,
        @Nullable VisitId returnsTo,
        LocalDate date,
        List<UserId> crew,
        VisitStatus status,
        String note,
        @Nullable DocumentId sheet,
        @Nullable LocalDate completedOn,
        @Nullable DocumentId closing,
        @Nullable InvoiceId invoice,
        int version,
        List<Line> lines,
        List<VisitChange> changes,
        List<SoapWarning> warnings,
        List<ScopeChange> scopeChanges) {
    public Visit {
        crew = List.copyOf(crew);
        lines = List.copyOf(lines);
        changes = List.copyOf(changes);
        warnings = List.copyOf(warnings);
        scopeChanges = List.copyOf(scopeChanges);
    }

    /**
     * Planned work.
     *
     * @param  returnsFor the skipped work of an earlier visit that this line does
     */
    public record Line(
            VisitLineId id,
            ServiceItemId serviceItem,
            ServiceLineId serviceLine,
            @Nullable SurfaceId surface,
            Quantity planned,
            @Nullable QuoteLineId quoteLine,
            @Nullable ScopeChangeId returnsFor) {}

    /** A visit in a list. */
    public record Summary(
            VisitId id,
            CustomerId customer,
            SiteId site,
            LocalDate date,
            @Nullable LocalDate completedOn,
            List<UserId> crew,
            VisitStatus status) {
        public Summary {
            crew = List.copyOf(crew);
        }
    }
}
