package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.RecordAudit;
import eaveside.access.User;
import eaveside.kernel.Ids;
import eaveside.kernel.Refusal;
import eaveside.web.entrance.PlainAnswer;
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
import java.text.ParseException;
import java.util.Optional;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/** The one place where a "no" becomes an answer: problem JSON for scripts, a page for people. */
@Provider
@ApplicationScoped
public class RefusalMapper implements ExceptionMapper<Throwable> {
    private static final Logger LOG = Logger.getLogger(RefusalMapper.class.getName());

    private static final int BUSY_SECONDS = 5;
    private static final String REFUSAL = "eaveside.refusal";

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
        Refusal refusal = in(thrown, Refusal.class);
        if (refusal != null) {
            noteForbidden(refusal);
            return answer(wantsPage() ? refusal : Named.in(request, uri, refusal));
        }
        if (thrown instanceof WebApplicationException known
                && known.getResponse().getStatus() < 500) {
            return answer(known);
        }
        if (in(thrown, JsonException.class) != null
                || in(thrown, JsonbException.class) != null
                || in(thrown, ParseException.class) != null
                || thrown instanceof ProcessingException) {
            return answer(new WebRefusal.Unreadable("The body is not what this address takes"));
        }
        if (in(thrown, OptimisticLockException.class) != null) {
            return answer(new Overtaken());
        }
        BrokenConstraint broken = BrokenConstraint.in(thrown);
        if (broken != null) {
            LOG.log(Level.WARNING, thrown, () -> "the database refused what a use case let through, " + broken.code());
            return answer(broken);
        }
        PlainAnswer outage = Outage.behind(thrown);
        if (outage != null) {
            String what = outage.equals(PlainAnswer.noDatabase()) ? "No database" : "The database took too long";
            // Without the address: whatever callers ask for meanwhile, it is one thing, which the log tells once with a
            // count.
            LOG.log(Level.WARNING, thrown, () -> what);
            return unavailable(outage);
        }
        String id = Ids.next().toString();
        LOG.log(Level.SEVERE, thrown, () -> "Fault " + id + " at " + uri.getPath());
        return wantsPage() ? page(500, "common.fault", id) : Problems.fault(id);
    }

    private Response unavailable(PlainAnswer answer) {
        boolean script = !wantsPage();
        return Response.status(answer.status())
                .header(HttpHeaders.RETRY_AFTER, answer.again())
                .type(answer.type(script))
                .entity(answer.body(script, request.getMethod()))
                .build();
    }

    /** What a use case forbids somebody goes on the audit log; what a role forbids, {@link Guard} has put there already. */
    private void noteForbidden(Refusal refusal) {
        User user = viewer.user();
        if (refusal.type() == Refusal.Type.FORBIDDEN && !(refusal instanceof WebRefusal) && user != null) {
            recordAudit.record(Guard.refused(request.getMethod(), user, request.getRequestURI())
                    .with(refusal.code()));
        }
    }

    /** What the platform itself refuses, such as an address that is none. */
    private Response answer(WebApplicationException thrown) {
        Response known = thrown.getResponse();
        if (known.getStatus() < 400) {
            return known;
        }
        Refusal refusal = thrown instanceof NotFoundException
                ? new WebRefusal.NoSuchPage()
                : new WebRefusal.Unreadable(known.getStatusInfo().getReasonPhrase());
        return answer(refusal, known.getStatus());
    }

    private Response answer(Refusal refusal) {
        return answer(refusal, statusOf(refusal));
    }

    private Response answer(Refusal refusal, int status) {
        request.setAttribute(REFUSAL, refusal);
        return wantsPage() ? page(status, "", refusal.said()) : Problems.response(refusal, status);
    }

    /** What the request was refused for; empty where it was not. */
    public static Optional<Refusal> refusal(HttpServletRequest request) {
        return Optional.ofNullable((Refusal) request.getAttribute(REFUSAL));
    }

    private static Response page(int status, String key, String detail) {
        return Response.status(status)
                .type(MediaType.TEXT_HTML_TYPE)
                .entity(new RefusalPage(status, key, detail))
                .build();
    }

    private boolean wantsPage() {
        String accept = headers.getHeaderString(HttpHeaders.ACCEPT);
        return !uri.getPath().startsWith("api/")
                && !uri.getPath().startsWith("/api/")
                && accept != null
                && accept.contains(MediaType.TEXT_HTML);
    }

    /** The beginning of an answer that says no: its status, and when to come again where time is all that it takes. */
    static Response.ResponseBuilder status(Refusal refusal) {
        Response.ResponseBuilder answer = Response.status(statusOf(refusal));
        return switch (refusal) {
            case AccessRefusal.TooSoon soon -> answer.header(HttpHeaders.RETRY_AFTER, soon.seconds());
            case AccessRefusal.Busy busy -> answer.header(HttpHeaders.RETRY_AFTER, BUSY_SECONDS);
            default -> answer;
        };
    }

    /** The types say most; these few have a status of their own in HTTP. */
    static int statusOf(Refusal refusal) {
        return switch (refusal) {
            case WebRefusal.SignInFirst first -> 401;
            case AccessRefusal.WrongCredentials wrong -> 401;
            case AccessRefusal.BadToken bad -> 401;
            case AccessRefusal.TooSoon soon -> 429;
            case AccessRefusal.Busy busy -> 429;
            default -> refusal.type().status();
        };
    }

    /** What was thrown, or the first of its causes, of that type; null for none. */
    private static <T extends Throwable> @Nullable T in(Throwable thrown, Class<T> type) {
        for (Throwable t = thrown; t != null; t = t.getCause()) {
            if (type.isInstance(t)) {
                return type.cast(t);
            }
        }
        return null;
    }

    /** Somebody else saved first and the use case had no version to show. */
    private static final class Overtaken extends Refusal {
        private static final long serialVersionUID = 1;

        private Overtaken() {
            super(Type.CONFLICT, "Another user changed this first. Load it again, then change it");
        }
    }
}
