package eaveside.visits.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Decision;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.CostKind;
import eaveside.ledger.Entry;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** What a visit cost, by service line and kind of cost, and the entries that take it into work in progress. */
@Decision
public final class SheetCost {
    private final Map<ServiceLineId, Map<CostKind, Money>> byLine = new LinkedHashMap<>();

    /** One cell of the table; never zero. */
    public record Part(ServiceLineId serviceLine, CostKind kind, Money amount) {}

    public void add(ServiceLineId line, CostKind kind, Money amount) {
        if (!amount.isZero()) {
            byLine.computeIfAbsent(line, l -> new LinkedHashMap<>()).merge(kind, amount, Money::plus);
        }
    }

    public List<Part> parts() {
        List<Part> parts = new ArrayList<>();
        byLine.forEach((line, kinds) -> kinds.forEach((kind, amount) -> parts.add(new Part(line, kind, amount))));
        return parts;
    }

    /** Debits work in progress by line and kind, credits where the cost came from. */
    public List<Entry> entries(VisitId visit, CustomerId customer) {
        List<Entry> entries = new ArrayList<>();
        for (Part part : parts()) {
            entries.add(Entry.debit(AccountRole.WORK_IN_PROGRESS, part.amount())
                    .on(part.serviceLine(), visit, customer)
                    .as(part.kind()));
            entries.add(Entry.credit(source(part.kind()), part.amount()).on(part.serviceLine(), visit, customer));
        }
        return entries;
    }

    private static AccountRole source(CostKind kind) {
        return switch (kind) {
            case LABOUR -> AccountRole.LABOUR_APPLIED;
            case CONSUMABLES -> AccountRole.INVENTORY;
            case TRAVEL -> AccountRole.TRAVEL_APPLIED;
            case OVERHEAD -> AccountRole.OVERHEAD_APPLIED;
        };
    }
}
