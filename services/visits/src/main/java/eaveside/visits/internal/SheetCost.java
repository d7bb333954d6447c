package eaveside.visits.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Decision;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.CostType;
import eaveside.ledger.Entry;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a visit cost, by service line and type of cost, and the entries that take it into work in progress. */
@Decision
public final class SheetCost {
    private final Map<ServiceLineId, Map<CostType, Money>> byLine = new LinkedHashMap<>();

    /** One cell of the table; never zero. */
    public record Part(ServiceLineId serviceLine, CostType type, Money amount) {}

    public void add(ServiceLineId line, CostType type, Money amount) {
        if (!amount.isZero()) {
            byLine.computeIfAbsent(line, l -> new LinkedHashMap<>()).merge(type, amount, Money::plus);
        }
    }

    public List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        byLine.forEach((line, types) -> types.forEach((type, amount) -> parts.add(new Part(line, type, amount))));
        return parts;
    }

    /** Debits work in progress by line and type, credits where the cost came from. */
    public List<Entry> entries(VisitId visit, CustomerId customer) {
        List<Entry> entries = new ArrayList<>();
        for (Part part : parts()) {
            entries.add(Entry.debit(AccountRole.WORK_IN_PROGRESS, part.amount())
                    .on(part.serviceLine(), visit, customer)
                    .as(part.type()));
            entries.add(Entry.credit(source(part.type()), part.amount()).on(part.serviceLine(), visit, customer));
        }
        return entries;
    }

    private static AccountRole source(CostType type) {
        return switch (type) {
            case LABOR -> AccountRole.LABOR_APPLIED;
            case CONSUMABLES -> AccountRole.INVENTORY;
            case TRAVEL -> AccountRole.TRAVEL_APPLIED;
            case OVERHEAD -> AccountRole.OVERHEAD_APPLIED;
        };
    }
}
