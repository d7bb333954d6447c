package eaveside.visits;

import eaveside.access.RecordAudit;
import eaveside.kernel.Shared;
import eaveside.visits.internal.SentSheetReadRow;
import eaveside.visits.internal.SentSheets;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Notes that the office has read what was sent as a visit's sheet and did not become it, and what came of it. */
@Shared
public class AcknowledgeSentSheet {
    private final EntityManager entities;
    private final SentSheets sentSheets;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public AcknowledgeSentSheet(EntityManager entities, SentSheets sentSheets, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.sentSheets = sentSheets;
        this.audit = audit;
        this.clock = clock;
    }

    /** Once: whoever comes second changes nothing, since it was read. Refuses an unknown id. */
    @Transactional
    public void acknowledge(Acknowledgment acknowledged) {
        sentSheets.locked(acknowledged.sheet());
        if (entities.find(SentSheetReadRow.class, acknowledged.sheet().value()) != null) {
            return;
        }
        entities.persist(new SentSheetReadRow(acknowledged, clock.instant()));
        audit.done("visit.sheet-read", acknowledged.by(), acknowledged.sheet());
    }
}
