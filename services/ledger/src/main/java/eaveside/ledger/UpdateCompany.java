package eaveside.ledger;

import eaveside.ledger.internal.CompanyRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import org.jspecify.annotations.Nullable;

/** Changes what the company is called, how it is reached, and how it measures; its currency and first month stay. */
@Dependent
public class UpdateCompany {
    private final EntityManager entities;

    @Inject
    public UpdateCompany(EntityManager entities) {
        this.entities = entities;
    }

    /** The company with the version that a change must name. */
    public record Versioned(Company company, int version) {}

    /** For a form that changes it. Refuses with {@link LedgerRefusal.NotFounded} where there is none. */
    @Transactional
    public Versioned current() {
        return versioned(entities.find(CompanyRow.class, CompanyRow.ID));
    }

    /**
     * Answers what is stored, with its version. Refuses another currency or first month, and a version that somebody
     * else has saved over; what is stored already is a retry and changes nothing.
     */
    @Transactional
    public Versioned update(Company wanted, int version) {
        CompanyRow row = entities.find(CompanyRow.class, CompanyRow.ID, LockModeType.PESSIMISTIC_WRITE);
        Versioned stored = versioned(row);
        Company before = stored.company();
        if (before.equals(wanted)) {
            return stored;
        }
        if (!before.currency().equals(wanted.currency())) {
            throw new LedgerRefusal.Unchangeable("currency");
        }
        if (!before.booksFrom().equals(wanted.booksFrom())) {
            throw new LedgerRefusal.Unchangeable("booksFrom");
        }
        if (stored.version() != version) {
            throw new LedgerRefusal.CompanyChangedMeanwhile(stored);
        }
        row.write(wanted);
        entities.flush();
        return versioned(row);
    }

    private static Versioned versioned(@Nullable CompanyRow row) {
        if (row == null) {
            throw new LedgerRefusal.NotFounded();
        }
        return new Versioned(row.toCompany(), row.version());
    }
}
