package eaveside.visits.internal;

import eaveside.costing.ApplyVisitCost;
import eaveside.costing.Effort;
import eaveside.costing.LineCost;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Quantity;
import eaveside.ledger.CostKind;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.visits.VisitSheet;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** The work that a sheet reports, with the standards it is measured by. */
@Dependent
public class SheetWork {
    private final Visits visits;
    private final Catalogue catalogue;
    private final Surroundings surroundings;
    private final ApplyVisitCost applyVisitCost;

    @Inject
    public SheetWork(Visits visits, Catalogue catalogue, Surroundings surroundings, ApplyVisitCost applyVisitCost) {
        this.visits = visits;
        this.catalogue = catalogue;
        this.surroundings = surroundings;
        this.applyVisitCost = applyVisitCost;
    }

    /** The extras as lines of the visit; refuses surfaces of other sites and offerings that do not fit them. */
    public List<VisitLineRow> extras(VisitRow visit, VisitSheet sheet) {
        List<VisitLineRow> rows = new ArrayList<>();
        DocumentId document = sheet.id();
        for (VisitSheet.Extra extra : sheet.extras()) {
            visits.requireFree(extra.id());
            Offering offering = catalogue.offering(extra.offering());
            surroundings.requireFits(visit.site(), extra.surface(), offering);
            rows.add(new VisitLineRow(
                    visit.id(),
                    document,
                    rows.size() + 1,
                    extra,
                    offering.serviceLine(),
                    extra.quantity().in(offering.unit())));
        }
        return rows;
    }

    /** Planned lines with what was done of them, then extras. */
    public List<WorkLine> lines(List<VisitLineRow> planned, ScopeDifferences scope, List<VisitLineRow> extras) {
        List<WorkLine> work = new ArrayList<>();
        for (VisitLineRow line : planned) {
            work.add(line(line, line.quantity(), scope.doneOf(line.id())));
        }
        for (VisitLineRow line : extras) {
            work.add(line(line, Quantity.zero(line.quantity().unit()), line.quantity()));
        }
        return work;
    }

    private WorkLine line(VisitLineRow line, Quantity planned, Quantity done) {
        Offering offering = catalogue.offering(line.offering());
        return new WorkLine(
                line.serviceLine(), line.surface(), planned, done, offering.minutesPerUnit(), offering.consumables());
    }

    /** Adds labour, travel and overhead at the rates of the day. */
    public void addTo(SheetCost cost, LocalDate day, Effort effort, List<WorkLine> work) {
        List<LineCost> shares = applyVisitCost
                .apply(
                        day,
                        effort,
                        work.stream()
                                .filter(WorkLine::isDone)
                                .map(WorkLine::workDone)
                                .toList(),
                        work.stream().map(WorkLine::workPlanned).toList())
                .lines();
        for (LineCost share : shares) {
            cost.add(share.serviceLine(), CostKind.LABOUR, share.labour());
            cost.add(share.serviceLine(), CostKind.TRAVEL, share.travel());
            cost.add(share.serviceLine(), CostKind.OVERHEAD, share.overhead());
        }
    }
}
