package eaveside.ledger;

import eaveside.kernel.CustomerId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which entries to show; absent parts do not filter.
 *
 * @param  customers    of any of them, since a customer may have several ids after a merge; empty for all
 * @param  fromFindings only entries of work that came from a finding
 */
public record EntryFilter(
        @Nullable LocalDate from,
        @Nullable LocalDate to,
        List<AccountRef> accounts,
        @Nullable ServiceLineId serviceLine,
        boolean withoutServiceLine,
        @Nullable VisitId visit,
        List<CustomerId> customers,
        @Nullable CostType costType,
        boolean fromFindings) {
    public EntryFilter {
        accounts = List.copyOf(accounts);
        customers = List.copyOf(customers);
    }

    public static EntryFilter of(AccountRef account, LocalDate from, LocalDate to) {
        return of(List.of(account), from, to);
    }

    public static EntryFilter of(List<? extends AccountRef> accounts, LocalDate from, LocalDate to) {
        return new EntryFilter(from, to, List.copyOf(accounts), null, false, null, List.of(), null, false);
    }

    public EntryFilter on(ServiceLineId line) {
        return new EntryFilter(from, to, accounts, line, false, visit, customers, costType, fromFindings);
    }

    public EntryFilter withoutLine() {
        return new EntryFilter(from, to, accounts, null, true, visit, customers, costType, fromFindings);
    }

    public EntryFilter as(CostType type) {
        return new EntryFilter(
                from, to, accounts, serviceLine, withoutServiceLine, visit, customers, type, fromFindings);
    }

    public EntryFilter whichCameFromFindings() {
        return new EntryFilter(from, to, accounts, serviceLine, withoutServiceLine, visit, customers, costType, true);
    }
}
