package eaveside.visits.internal;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardMinutes;
import eaveside.costing.ApplyVisitCost;
import eaveside.costing.Effort;
import eaveside.costing.LineCost;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Elements;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.ledger.CostType;
import eaveside.visits.JobSheet;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;

/** The work that a sheet reports, with the standards it is measured by. */
@Shared
public class SheetWork {
    private final Visits visits;
    private final Catalog catalog;
    private final Surroundings surroundings;
    private final ApplyVisitCost applyVisitCost;

    @Inject
    public SheetWork(Visits visits, Catalog catalog, Surroundings surroundings, ApplyVisitCost applyVisitCost) {
        this.visits = visits;
        this.catalog = catalog;
        this.surroundings = surroundings;
        this.applyVisitCost = applyVisitCost;
    }

    /**
     * The extras as lines of the visit; refuses surfaces of other sites, services that do not fit them, and what is more,
     * with what was done of the plan, than a visit takes.
     */
    public List<VisitLineRow> extras(VisitRow visit, JobSheet sheet, List<VisitLineRow> planned, ScopeChanges scope) {
        List<VisitLineRow> rows = new ArrayList<>();
        List<StandardMinutes> minutes = new ArrayList<>();
        DocumentId document = sheet.id();
        Elements.each("extras", sheet.extras(), (extra, i) -> {
            visits.requireFree(extra.id());
            ServiceItem serviceItem = catalog.serviceItem(extra.serviceItem());
            surroundings.requireFits(visit.site(), extra.surface(), serviceItem);
            rows.add(new VisitLineRow(
                    visit.id(),
                    document,
                    rows.size() + 1,
                    extra,
                    serviceItem.serviceLine(),
                    extra.quantity().in(serviceItem.unit(), "quantity")));
            minutes.add(serviceItem.minutesFor(extra.quantity()));
        });
        StandardMinutes done = planned.stream()
                .map(line -> catalog.serviceItem(line.serviceItem()).minutesFor(scope.doneOf(line.id())))
                .reduce(StandardMinutes.ZERO, StandardMinutes::plus);
        StandardMinutes.requireOneVisit(done, "extras", minutes);
        return rows;
    }

    /** Planned lines with what was done of them, then extras. */
    public List<WorkLine> lines(List<VisitLineRow> planned, ScopeChanges scope, List<VisitLineRow> extras) {
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
        ServiceItem serviceItem = catalog.serviceItem(line.serviceItem());
        return new WorkLine(
                line.serviceLine(),
                line.surface(),
                planned,
                done,
                serviceItem.minutesPerUnit(),
                serviceItem.consumables());
    }

    /** Adds labor, travel and overhead at the rates of the day. */
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
            cost.add(share.serviceLine(), CostType.LABOR, share.labor());
            cost.add(share.serviceLine(), CostType.TRAVEL, share.travel());
            cost.add(share.serviceLine(), CostType.OVERHEAD, share.overhead());
        }
    }
}
