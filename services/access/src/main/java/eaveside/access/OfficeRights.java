package eaveside.access;

import eaveside.access.internal.OfficeRightsRow;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Whether the office reads the books, as the owner decides; and so what each role sees. */
@Shared
public class OfficeRights {
    private final EntityManager entities;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public OfficeRights(EntityManager entities, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.audit = audit;
        this.clock = clock;
    }

    /**
     * What is opened to the office beyond its role.
     *
     * @param  readsBooks whether it reads accounts, entries and journals, wages among them
     */
    public record Rights(boolean readsBooks) {}

    @Transactional
    public boolean readsBooks() {
        return row().readsBooks();
    }

    /** Opens the books to the office or closes them, at once for everybody; the same again changes nothing. */
    @Transactional
    public void letReadBooks(boolean readsBooks, UserId by) {
        OfficeRightsRow row = row();
        entities.refresh(row, LockModeType.PESSIMISTIC_WRITE);
        if (row.readsBooks() != readsBooks) {
            row.set(readsBooks, by, clock.instant());
            audit.done(AuditEvent.done("office.rights", by, readsBooks ? "reads the books" : "reads no books"));
        }
    }

    private OfficeRightsRow row() {
        return entities.find(OfficeRightsRow.class, OfficeRightsRow.ID);
    }
}
