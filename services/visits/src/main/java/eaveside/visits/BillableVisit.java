package eaveside.visits;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.BillableLines;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What a completed visit has to bill, as invoicing asks for it. */
@Shared
public class BillableVisit {
    private final Visits visits;
    private final BillableLines billableLines;

    @Inject
    public BillableVisit(Visits visits, BillableLines billableLines) {
        this.visits = visits;
        this.billableLines = billableLines;
    }

    /**
     * A visit to be billed.
     *
     * @param  date      of the work
     * @param  priceBook pinned by the quote; without one, the book in force on the date prices the visit
     * @param  version   of the visit: another one later tells that what is to be billed may have changed
     * @param  borne     service lines of the work of earlier visits of the same job: those visits bear their minimums.
     *                  Empty for a first visit, and for a return after nothing was billed
     * @param  lines     units done, extras to bill, and no-charge extras; none where everything was skipped
     */
    public record Billable(
            VisitId visit,
            CustomerId customer,
            SiteId site,
            LocalDate date,
            DocumentId sheet,
            @Nullable QuoteId quote,
            @Nullable PriceBookId priceBook,
            int version,
            Set<ServiceLineId> borne,
            List<BillableLine> lines) {
        public Billable {
            borne = Set.copyOf(borne);
            lines = List.copyOf(lines);
        }
    }

    /** Refuses a visit that is not completed or is billed, and one with a scope change that is not decided. */
    @Transactional
    public Billable of(VisitId id) {
        VisitRow visit = visits.required(id);
        visit.requireStatus(VisitStatus.COMPLETED);
        return new Billable(
                visit.id(),
                visit.customer(),
                visit.site(),
                visit.day(),
                visit.sheet(),
                visit.quote(),
                visit.priceBook(),
                visit.version(),
                billableLines.borneBefore(visit),
                billableLines.of(visit));
    }
}
