package eaveside.ledger;

import eaveside.access.RecordAudit;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.internal.CompanyRow;
import eaveside.ledger.internal.LedgerQueries;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;

/** Changes what the company is called, how it is reached, and how it measures; its currency and first month stay. */
@Shared
public class UpdateCompany {
    private final EntityManager entities;
    private final LedgerQueries queries;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public UpdateCompany(EntityManager entities, LedgerQueries queries, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.audit = audit;
        this.clock = clock;
    }

    /** For a form that changes it. Refuses with {@link LedgerRefusal.NotFounded} where there is none. */
    @Transactional
    public Company current() {
        return content(entities.find(CompanyRow.class, CompanyRow.ID));
    }

    /**
     * Answers what is stored, with its version. Refuses another currency or first month, a time zone in which the last
     * document lies in the future, and a version that another user has saved over; what is stored already is a retry and
     * changes nothing.
     */
    @Transactional
    public Company update(Company wanted, UserId by) {
        CompanyRow row = entities.find(CompanyRow.class, CompanyRow.ID, LockModeType.PESSIMISTIC_WRITE);
        Company stored = content(row);
        if (stored.saysTheSameAs(wanted)) {
            return stored;
        }
        if (!stored.currency().equals(wanted.currency())) {
            throw new LedgerRefusal.Unchangeable("currency");
        }
        if (!stored.booksFrom().equals(wanted.booksFrom())) {
            throw new LedgerRefusal.Unchangeable("booksFrom");
        }
        if (stored.version() != wanted.version()) {
            throw new KernelRefusal.Stale(wanted.what(), wanted, stored);
        }
        if (!stored.zone().equals(wanted.zone())) {
            requireNotBehindBooks(wanted);
        }
        row.write(wanted);
        audit.done("company.save", by, wanted.name());
        entities.flush();
        return row.toCompany();
    }

    /** Numbers follow dates, so nothing could be posted there until the last document's day has come. */
    private void requireNotBehindBooks(Company wanted) {
        LocalDate today = clock.instant().atZone(ZoneId.of(wanted.zone())).toLocalDate();
        queries.lastDateOfAll().stream().filter(today::isBefore).findFirst().ifPresent(last -> {
            throw new KernelRefusal.Unfit(
                    "zone",
                    "{field}: there it is still " + today + ", and the books have documents of " + last
                            + ". Change it once it is that day there");
        });
    }

    private static Company content(@Nullable CompanyRow row) {
        if (row == null) {
            throw new LedgerRefusal.NotFounded();
        }
        return row.toCompany();
    }
}
