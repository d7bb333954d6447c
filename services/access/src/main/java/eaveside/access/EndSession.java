package eaveside.access;

import eaveside.access.internal.SessionRow;
import eaveside.access.internal.Sessions;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Ends sessions: one's own by signing out, or one that the user sees in the list and does not know. */
@Shared
public class EndSession {
    private final Sessions sessions;
    private final RecordAudit audit;

    @Inject
    public EndSession(Sessions sessions, RecordAudit audit) {
        this.sessions = sessions;
        this.audit = audit;
    }

    /** Refuses a session that is not of that user; one that has ended stays so. */
    @Transactional
    public void end(SessionId id, UserId by) {
        SessionRow row = sessions.locked(id);
        if (row == null || !row.isOf(by)) {
            throw new KernelRefusal.NotFound("session", id);
        }
        if (sessions.end(row)) {
            audit.done(AuditEvent.done("session.ended", by, row.address()));
        }
    }

    /** Ends the session that a browser had before it signed in anew, which the audit log tells; a secret of none changes nothing. */
    @Transactional
    public void replaced(String secret) {
        sessions.lockedBy(secret).ifPresent(sessions::end);
    }

    /** Ends every session of the user but the one at hand. */
    @Transactional
    public void endOthers(SessionId kept, UserId by) {
        int ended = sessions.endOthers(by, kept);
        if (ended > 0) {
            audit.done(AuditEvent.done("session.others-ended", by, Integer.toString(ended)));
        }
    }
}
