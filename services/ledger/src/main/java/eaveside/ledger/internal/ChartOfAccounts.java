package eaveside.ledger.internal;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountRole;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;

/** Finds the account that an entry means. */
@Shared
public class ChartOfAccounts {
    private final EntityManager entities;
    private final LedgerQueries queries;

    @Inject
    public ChartOfAccounts(EntityManager entities, LedgerQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** Refuses a code that is not in the chart. */
    public AccountRow account(AccountRef ref) {
        return switch (ref) {
            case AccountCode code -> {
                AccountRow row = entities.find(AccountRow.class, code.value());
                if (row == null) {
                    throw new KernelRefusal.NotFound("account", code.value()).namedBy("account");
                }
                yield row;
            }
            case AccountRole role -> {
                List<AccountRow> rows = queries.accountsInRole(role);
                if (rows.isEmpty()) {
                    throw new KernelRefusal.NotFound("account", role.name()).namedBy("account");
                }
                yield rows.getFirst();
            }
        };
    }
}
