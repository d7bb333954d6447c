package eaveside.ledger;

import eaveside.kernel.Shared;
import eaveside.ledger.internal.CompanyRow;
import eaveside.ledger.internal.PeriodRow;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;

/** Sets up the one company of a database and opens its first period. */
@Shared
public class FoundCompany {
    private final EntityManager entities;
    private final Books books;
    private final Clock clock;

    @Inject
    public FoundCompany(EntityManager entities, Books books, Clock clock) {
        this.entities = entities;
        this.books = books;
        this.clock = clock;
    }

    /**
     * Refuses with {@link LedgerRefusal.AlreadyFounded} where another company has been set up, and books that begin more than
     * ten years from today, before or after: they never begin on another day. The same again is a retry.
     */
    @Transactional
    public void found(Company company) {
        if (books.areFounded()) {
            if (books.company().saysTheSameAs(company)) {
                return;
            }
            throw new LedgerRefusal.AlreadyFounded();
        }
        LocalDate today = clock.instant().atZone(ZoneId.of(company.zone())).toLocalDate();
        Books.near(company.booksFrom(), "booksFrom", today, "today", today);
        entities.persist(new CompanyRow(company));
        entities.persist(new PeriodRow(company.booksFrom()));
    }
}
