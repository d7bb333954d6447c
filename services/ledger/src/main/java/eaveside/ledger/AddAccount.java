package eaveside.ledger;

import eaveside.kernel.Texts;
import eaveside.ledger.internal.AccountRow;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/** Adds an account of the company's own to the chart. */
@Dependent
public class AddAccount {
    private final EntityManager entities;
    private final LedgerQueries queries;

    @Inject
    public AddAccount(EntityManager entities, LedgerQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** Refuses a code or name that is taken. */
    @Transactional
    public void add(AccountCode code, String name, AccountType type) {
        String title = Texts.required("name", name, 100);
        if (!queries.accountsCodedOrNamed(code.value(), title).isEmpty()) {
            throw new LedgerRefusal.AccountTaken(code.value());
        }
        entities.persist(new AccountRow(code.value(), title, type));
    }
}
