package eaveside.web.security;

import eaveside.access.BeginSession;
import eaveside.access.EndSession;
import eaveside.access.Role;
import eaveside.access.SignedIn;
import eaveside.kernel.Digest;
import eaveside.web.entrance.Credential;
import eaveside.web.entrance.Shares;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.util.Objects;

/** Begins a session and gives its secret to the browser. */
@ApplicationScoped
public class NewSession {
    @Inject
    BeginSession beginSession;

    @Inject
    EndSession endSession;

    @Inject
    Shares shares;

    @Inject
    Clock clock;

    /** The answer with the session's cookie; what the browser had before ends. On a phone it outlives the browser's being closed. */
    public Response withCookie(HttpServletRequest request, SignedIn signedIn, Response answer) {
        String agent = Objects.requireNonNullElse(request.getHeader(HttpHeaders.USER_AGENT), "");
        String before = Credential.Kept.SESSION.in(request);
        BeginSession.Begun begun =
                beginSession.begin(signedIn, request.getRemoteAddr(), agent, Credential.Kept.BROWSER.in(request));
        if (before != null) {
            endSession.replaced(before);
        }
        shares.admitted(Digest.sha256(begun.secret()), signedIn.user().id(), Shares.Way.HALF);
        boolean kept = signedIn.user().role() == Role.TECHNICIAN;
        return Response.fromResponse(answer)
                .header(
                        HttpHeaders.SET_COOKIE,
                        Credential.Kept.SESSION.cookie(request, begun.secret(), kept ? begun.whole() : null, clock))
                .header(
                        HttpHeaders.SET_COOKIE,
                        Credential.Kept.BROWSER.cookie(request, begun.browser(), BeginSession.BROWSER_KNOWN, clock))
                .build();
    }
}
