package eaveside.ledger;

import eaveside.access.RecordAudit;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.AccountRow;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/** Adds an account of the company's own to the chart. */
@Shared
public class AddAccount {
    private final EntityManager entities;
    private final LedgerQueries queries;
    private final RecordAudit audit;

    @Inject
    public AddAccount(EntityManager entities, LedgerQueries queries, RecordAudit audit) {
        this.entities = entities;
        this.queries = queries;
        this.audit = audit;
    }

    /** Refuses a code or name that another account has; the same account again changes nothing. */
    @Transactional
    public Account add(NewAccount account, UserId by) {
        queries.takeTurn("chart of accounts");
        AccountRow before = entities.find(AccountRow.class, account.code().value());
        if (before != null && before.isSame(account)) {
            return before.toAccount();
        }
        String code = account.code().value();
        if (before != null) {
            throw new KernelRefusal.Taken("account", "code", code);
        }
        if (!queries.accountsNamed(account.name()).isEmpty()) {
            throw new KernelRefusal.Taken("account", "name", account.name());
        }
        AccountRow row = new AccountRow(account);
        entities.persist(row);
        audit.done("account.add", by, account.code());
        return row.toAccount();
    }
}
