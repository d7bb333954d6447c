package eaveside.findings;

import eaveside.findings.internal.AnswerRow;
import eaveside.findings.internal.FindingRow;
import eaveside.kernel.Fingerprint;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;

/**
 * Records what was done about a finding, as often as needed until it is closed. Each refuses an unknown finding, a
 * closed or withdrawn one, and an answer's id used before with other content; the same answer again changes nothing.
 */
@Dependent
public class AnswerFinding {
    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public AnswerFinding(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    /** Records that a notice went to the customer. */
    @Transactional
    public void sendNotice(Answer.Notice notice) {
        record(notice, Fingerprint.of(notice));
    }

    /** Notes work that could come of it. */
    @Transactional
    public void noteUpsell(Answer.Upsell upsell) {
        record(upsell, Fingerprint.of(upsell));
    }

    /** Records a referral to a licensed trade. */
    @Transactional
    public void refer(Answer.Referral referral) {
        record(referral, Fingerprint.of(referral));
    }

    /** Closes the finding. */
    @Transactional
    public void close(Answer.Closing closing) {
        record(closing, Fingerprint.of(closing));
    }

    private void record(Answer answer, Fingerprint fingerprint) {
        // Locked, so that of two people one answers before the other closes, or is told that it is closed.
        FindingRow finding = entities.find(FindingRow.class, answer.finding().value(), LockModeType.PESSIMISTIC_WRITE);
        if (finding == null) {
            throw new FindingRefusal.NoSuchFinding(answer.finding().toString());
        }
        AnswerRow before = entities.find(AnswerRow.class, answer.id().value());
        if (before != null) {
            before.requireSame(fingerprint);
            return;
        }
        finding.requireOpen();
        Instant now = clock.instant();
        entities.persist(new AnswerRow(answer, fingerprint, now));
        if (answer instanceof Answer.Closing) {
            finding.close(now);
        }
    }
}
