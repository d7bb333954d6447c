package eaveside.web.security;

import eaveside.access.AuditEvent;
import eaveside.access.RecordAudit;
import jakarta.enterprise.context.RequestScoped;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;

/** Writes to the audit log what the viewer did, with the address that it came from. */
@RequestScoped
public class AuditLog {
    @Inject
    RecordAudit recordAudit;

    @Inject
    Viewer viewer;

    @Inject
    HttpServletRequest request;

    private boolean told;

    /** Whether this request has told of something that was done. */
    boolean isTold() {
        return told;
    }

    /**
     * A deed that came about.
     *
     * @param  action  such as {@code invoice.issue}
     * @param  subject the id or name of what it was done to
     */
    public void done(String action, Object subject) {
        told = true;
        recordAudit.record(
                AuditEvent.done(action, viewer.id(), subject.toString()).from(request.getRemoteAddr()));
    }
}
