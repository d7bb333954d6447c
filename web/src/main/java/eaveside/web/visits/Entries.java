package eaveside.web.visits;

import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ReadLedger;
import eaveside.visits.ReadSheets.Cost;
import java.util.Objects;

/** The addresses of the entries behind a visit's figures. */
final class Entries {
    private Entries() {}

    static AccountCode workInProgress(ReadLedger readLedger) {
        return Objects.requireNonNull(readLedger.accountsInRoles().get(AccountRole.WORK_IN_PROGRESS));
    }

    static String of(AccountCode account, VisitId visit) {
        return "/books/entries?account=" + account + "&visit=" + visit;
    }

    static String of(AccountCode account, VisitId visit, ServiceLineId line) {
        return of(account, visit) + "&line=" + line;
    }

    static String of(AccountCode account, VisitId visit, Cost cost) {
        return of(account, visit, cost.serviceLine()) + "&cost=" + cost.type();
    }
}
