package eaveside.findings;

import eaveside.access.RecordAudit;
import eaveside.findings.internal.FindingActionRow;
import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.FindingRow;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;

/**
 * Records what was done about a finding, as often as needed until it is closed. Each refuses an unknown finding, a
 * closed or withdrawn one, and an action's id used before with other content; the same action again changes nothing, also
 * where both come at once. Each stands on the audit log in the same transaction.
 */
@Shared
public class ActOnFinding {
    private final EntityManager entities;
    private final FindingQueries queries;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public ActOnFinding(EntityManager entities, FindingQueries queries, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.audit = audit;
        this.clock = clock;
    }

    /** Records that a notice went to the customer. */
    @Transactional
    public void sendNotice(FindingAction.Notice notice) {
        record(notice, Fingerprint.of(notice));
    }

    /** Notes work that could come of it. */
    @Transactional
    public void noteUpsell(FindingAction.Upsell upsell) {
        record(upsell, Fingerprint.of(upsell));
    }

    /** Records a referral to a licensed trade. */
    @Transactional
    public void refer(FindingAction.Referral referral) {
        record(referral, Fingerprint.of(referral));
    }

    /** Closes the finding. */
    @Transactional
    public void close(FindingAction.Closing closing) {
        record(closing, Fingerprint.of(closing));
    }

    private void record(FindingAction action, Fingerprint fingerprint) {
        queries.takeTurnOf(action.id().toString());
        // Locked, so that of two people one acts before the other closes, or is told that it is closed.
        FindingRow finding = entities.find(FindingRow.class, action.finding().value(), LockModeType.PESSIMISTIC_WRITE);
        if (finding == null) {
            throw new KernelRefusal.NotFound("finding", action.finding());
        }
        FindingActionRow before =
                entities.find(FindingActionRow.class, action.id().value());
        if (before != null) {
            before.requireSame(fingerprint);
            return;
        }
        finding.requireOpen();
        Instant now = clock.instant();
        entities.persist(new FindingActionRow(action, fingerprint, now));
        if (action instanceof FindingAction.Closing) {
            finding.close(now);
        }
        audit.done("finding.act", action.by(), action.finding());
    }
}
