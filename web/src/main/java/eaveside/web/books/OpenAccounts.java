package eaveside.web.books;

import eaveside.access.Sight;
import eaveside.kernel.Shared;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountRole;
import eaveside.ledger.DocumentView;
import eaveside.ledger.EntryLine;
import eaveside.ledger.ReadLedger;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import jakarta.inject.Inject;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;

/**
 * Which accounts the viewer may read. Who does not read the books still opens what customers were billed and what they
 * owe down to its entries: no cost, wage or bank balance is among these accounts, since only documents post to them.
 */
@Shared
class OpenAccounts {
    private static final Set<AccountRole> OF_CUSTOMERS =
            EnumSet.of(AccountRole.RECEIVABLES, AccountRole.CUSTOMER_CREDIT, AccountRole.REVENUE);

    @Inject
    ReadLedger readLedger;

    @Inject
    Viewer viewer;

    boolean areAll() {
        return viewer.sees(Sight.BOOKS);
    }

    /** The accounts asked for, or all that are open where none is; refuses one that is not open. */
    List<AccountRef> among(List<AccountCode> asked) {
        if (areAll()) {
            return List.copyOf(asked);
        }
        Set<AccountCode> open = open();
        if (!open.containsAll(asked)) {
            throw new WebRefusal.NotForYourRole();
        }
        return List.copyOf(asked.isEmpty() ? open : asked);
    }

    /** The entries of a document that the viewer may read. */
    List<EntryLine> among(DocumentView document) {
        if (areAll()) {
            return document.entries();
        }
        Set<AccountCode> open = open();
        return document.entries().stream()
                .filter(entry -> open.contains(entry.account()))
                .toList();
    }

    private Set<AccountCode> open() {
        Map<AccountRole, AccountCode> open = new HashMap<>(readLedger.accountsInRoles());
        open.keySet().retainAll(OF_CUSTOMERS);
        return Set.copyOf(open.values());
    }
}
