package eaveside.ledger;

import eaveside.kernel.Shared;
import eaveside.ledger.internal.CompanyRow;
import eaveside.ledger.internal.PeriodRow;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;

/** Sets up the one company of a database and opens its first period. */
@Shared
public class FoundCompany {
    private final EntityManager entities;
    private final Books books;

    @Inject
    public FoundCompany(EntityManager entities, Books books) {
        this.entities = entities;
        this.books = books;
    }

    /** Refuses with {@link LedgerRefusal.AlreadyFounded} where another company has been set up; the same again is a retry. */
    @Transactional
    public void found(Company company) {
        if (books.areFounded()) {
            if (books.company().saysTheSameAs(company)) {
                return;
            }
            throw new LedgerRefusal.AlreadyFounded();
        }
        entities.persist(new CompanyRow(company));
        entities.persist(new PeriodRow(company.booksFrom()));
    }
}
