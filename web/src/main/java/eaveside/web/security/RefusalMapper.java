package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.AuditEvent;
import eaveside.access.RecordAudit;
import eaveside.access.User;
import eaveside.kernel.Ids;
import eaveside.kernel.Refusal;
import eaveside.web.forms.BrokenConstraint;
import eaveside.web.forms.Named;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.json.JsonException;
import jakarta.json.bind.JsonbException;
import jakarta.persistence.OptimisticLockException;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.NotFoundException;
import jakarta.ws.rs.ProcessingException;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import jakarta.ws.rs.ext.ExceptionMapper;
import jakarta.ws.rs.ext.Provider;
import java.util.Locale;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/** The one place where a "no" becomes an answer: problem JSON for scripts, a page for people. */
@Provider
@ApplicationScoped
public class RefusalMapper implements ExceptionMapper<Throwable> {
    private static final Logger LOG = Logger.getLogger(RefusalMapper.class.getName());

    @Context
    UriInfo uri;

    @Context
    HttpHeaders headers;

    @Context
    HttpServletRequest request;

    @Inject
    Viewer viewer;

    @Inject
    RecordAudit recordAudit;

    @Override
    public Response toResponse(Throwable thrown) {
        Refusal refusal = refusalIn(thrown);
        if (refusal != null) {
            noteForbidden(refusal);
            Refusal located = wantsPage() ? refusal : Named.in(request, uri, refusal);
            return answer(located, statusOf(located));
        }
        if (thrown instanceof WebApplicationException known
                && known.getResponse().getStatus() < 500) {
            int status = known.getResponse().getStatus();
            return status < 400
                    ? known.getResponse()
                    : answer(
                            thrown instanceof NotFoundException
                                    ? new WebRefusal.NoSuchPage()
                                    : new WebRefusal.Unreadable(
                                            known.getResponse().getStatusInfo().getReasonPhrase()),
                            status);
        }
        if (caused(thrown, JsonException.class)
                || caused(thrown, JsonbException.class)
                || thrown instanceof ProcessingException) {
            return answer(new WebRefusal.Unreadable("The body is not what this address takes"), 400);
        }
        if (caused(thrown, OptimisticLockException.class)) {
            return answer(new Overtaken(), 409);
        }
        BrokenConstraint broken = BrokenConstraint.in(thrown);
        if (broken != null) {
            LOG.log(Level.WARNING, thrown, () -> "the database refused what a use case let through, " + broken.code());
            return answer(broken, statusOf(broken));
        }
        String id = Ids.next().toString();
        LOG.log(Level.SEVERE, thrown, () -> "Fault " + id + " at " + uri.getPath());
        return wantsPage()
                ? Response.status(500)
                        .type(MediaType.TEXT_HTML_TYPE)
                        .entity(new RefusalPage(500, "common.fault", id))
                        .build()
                : Problems.fault(id);
    }

    /** What a use case forbids somebody goes on the audit log; what a role forbids, {@link Guard} has put there already. */
    private void noteForbidden(Refusal refusal) {
        User user = viewer.user();
        if (refusal.type() == Refusal.Type.FORBIDDEN && !(refusal instanceof WebRefusal) && user != null) {
            recordAudit.record(AuditEvent.refused(
                            "access." + request.getMethod().toLowerCase(Locale.ROOT),
                            user.id(),
                            request.getRequestURI())
                    .with(refusal.code())
                    .from(request.getRemoteAddr()));
        }
    }

    private Response answer(Refusal refusal, int status) {
        return wantsPage()
                ? Response.status(status)
                        .type(MediaType.TEXT_HTML_TYPE)
                        .entity(new RefusalPage(status, "", refusal.text()))
                        .build()
                : Problems.response(refusal, status);
    }

    private boolean wantsPage() {
        String accept = headers.getHeaderString(HttpHeaders.ACCEPT);
        return !uri.getPath().startsWith("api/")
                && !uri.getPath().startsWith("/api/")
                && accept != null
                && accept.contains(MediaType.TEXT_HTML);
    }

    /** The types say most; these few have a status of their own in HTTP. */
    static int statusOf(Refusal refusal) {
        return switch (refusal) {
            case WebRefusal.TooLarge tooLarge -> 413;
            case WebRefusal.SignInFirst first -> 401;
            case AccessRefusal.WrongCredentials wrong -> 401;
            case AccessRefusal.BadToken bad -> 401;
            case AccessRefusal.TooSoon soon -> 429;
            case AccessRefusal.Busy busy -> 429;
            default -> refusal.type().status();
        };
    }

    private static @Nullable Refusal refusalIn(Throwable thrown) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof Refusal refusal) {
                return refusal;
            }
        }
        return null;
    }

    private static boolean caused(Throwable thrown, Class<? extends Throwable> type) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (type.isInstance(t)) {
                return true;
            }
        }
        return false;
    }

    /** Somebody else saved first and the use case had no version to show. */
    private static final class Overtaken extends Refusal {
        private static final long serialVersionUID = 1;

        private Overtaken() {
            super(Type.CONFLICT, "Another user changed this first. Load it again, then change it");
        }
    }
}
