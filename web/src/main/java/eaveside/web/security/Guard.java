package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.Admitted;
import eaveside.access.AuditEvent;
import eaveside.access.AuthenticateToken;
import eaveside.access.Duty;
import eaveside.access.Origin;
import eaveside.access.RecordAudit;
import eaveside.access.ResumeSession;
import eaveside.access.TokenScope;
import eaveside.access.User;
import eaveside.kernel.Digest;
import eaveside.web.entrance.Credential;
import eaveside.web.entrance.Shares;
import jakarta.annotation.Priority;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.ext.Provider;
import java.lang.annotation.Annotation;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Lets a request through to its resource only for the roles that the resource names with {@link RolesAllowed}, or for everybody
 * where it says {@link PermitAll}; a method outranks its class: by the session of a signed-in
 * person, or a script's bearer token. A resource that names nobody is closed. Every refusal of a signed-in person is
 * written to the audit log.
 */
@Provider
@ApplicationScoped
@Priority(Priorities.AUTHENTICATION)
public class Guard implements ContainerRequestFilter {
    private static final Set<String> READING = Set.of("GET", "HEAD", "OPTIONS");

    @Inject
    Viewer viewer;

    @Inject
    ResumeSession resumeSession;

    @Inject
    AuthenticateToken authenticateToken;

    @Inject
    RecordAudit recordAudit;

    @Inject
    Shares shares;

    @Inject
    SecondFactorRule secondFactorRule;

    @Inject
    Origin origin;

    @Context
    ResourceInfo resource;

    @Context
    HttpServletRequest servlet;

    @Override
    public void filter(ContainerRequestContext request) {
        String path = "/" + request.getUriInfo().getPath().replaceFirst("^/", "");
        origin.is(servlet.getRemoteAddr()); // every request on this thread says so anew
        viewer.at(path, request.getUriInfo().getQueryParameters().getFirst("done"));
        try {
            if (!byToken(request)) {
                bySession();
            }
        } catch (AccessRefusal.BadToken refusal) {
            String token = Credential.bearer(servlet);
            if (token != null) {
                shares.ended(Digest.sha256(token));
            }
            request.abortWith(Problems.response(refusal, 401));
            return;
        }
        if (isOpen()) {
            return;
        }
        User user = viewer.user();
        if (user == null) {
            request.abortWith(toSignIn(request, path));
            return;
        }
        Duty duty = viewer.duty();
        if (duty != null && !isOpenBefore(duty)) {
            request.abortWith(toDuty(request, path, duty));
            return;
        }
        TokenScope scope = viewer.scope();
        if (scope != null && (isForPeople() || !scope.includes(needed(request.getMethod())))) {
            recordAudit.record(refused(request.getMethod(), user, path).with("a token to " + scope));
            throw new WebRefusal.NotInScope(scope);
        }
        if (!mayCall(user)) {
            recordAudit.record(refused(request.getMethod(), user, path));
            throw new WebRefusal.NotForYourRole();
        }
    }

    /** What a person owes is theirs to do: it leads to a session, which would outlive the token. */
    private boolean isForPeople() {
        return said(BeforeDuties.class) != null;
    }

    private boolean isOpenBefore(Duty duty) {
        BeforeDuties open = said(BeforeDuties.class);
        return open != null && List.of(open.value()).contains(duty);
    }

    private TokenScope needed(String method) {
        if (said(Administers.class) != null) {
            return TokenScope.ADMINISTER;
        }
        return READING.contains(method) ? TokenScope.READ : TokenScope.WRITE;
    }

    /** The line of the audit log about what somebody may not do. */
    static AuditEvent refused(String method, User user, String path) {
        return AuditEvent.refused("access." + method.toLowerCase(Locale.ROOT), user.id(), path);
    }

    /** Whether the request comes with a token; what comes with one is asked for nothing else. */
    private boolean byToken(ContainerRequestContext request) {
        String token = Credential.bearer(servlet);
        if (token == null) {
            return false;
        }
        request.setProperty(CrossSite.BY_TOKEN, true);
        admit(token, authenticateToken.authenticate(token));
        return true;
    }

    private void bySession() {
        String secret = Credential.Kept.SESSION.in(servlet);
        if (secret != null) {
            resumeSession
                    .resume(secret, secondFactorRule.ownersNeedTwo())
                    .ifPresentOrElse(who -> admit(secret, who), () -> shares.ended(Digest.sha256(secret)));
        }
    }

    private void admit(String secret, Admitted who) {
        shares.admitted(
                Digest.sha256(secret),
                who.user().id(),
                who.scope() != null
                        ? Shares.Way.SCRIPT
                        : who.duty() == Duty.SECOND_FACTOR ? Shares.Way.HALF : Shares.Way.SESSION);
        viewer.signedInAs(who);
    }

    /** What the method says, else what its class says; null where neither does. */
    private <A extends Annotation> @Nullable A said(Class<A> annotation) {
        A own = resource.getResourceMethod().getAnnotation(annotation);
        return own != null ? own : resource.getResourceClass().getAnnotation(annotation);
    }

    private boolean isOpen() {
        return said(PermitAll.class) != null && !resource.getResourceMethod().isAnnotationPresent(RolesAllowed.class);
    }

    private boolean mayCall(User user) {
        RolesAllowed allowed = said(RolesAllowed.class);
        Sees needed = said(Sees.class);
        return allowed != null
                && List.of(allowed.value()).contains(user.role().name())
                && (needed == null || viewer.sees(needed.value()));
    }

    /** People are sent to where they do what they owe. */
    private Response toDuty(ContainerRequestContext request, String path, Duty duty) {
        String place = switch (duty) {
            case SECOND_FACTOR -> "/sign-in/second";
            case NEW_PASSWORD, SET_UP_SECOND_FACTOR -> "/account";
        };
        Optional<Response> kept = KeptForms.kept(request, servlet, path, place);
        if (kept.isPresent()) {
            return kept.get();
        }
        return isPage(request, path) || KeptForms.isFromBrowser(request, path)
                ? Response.seeOther(UriBuilder.fromPath(place)
                                .queryParam("to", "{to}")
                                .build(request.getMethod().equals("GET") ? asked(request, path) : "/"))
                        .build()
                : Problems.response(new WebRefusal.DutyFirst(place), 403);
    }

    private static boolean isPage(ContainerRequestContext request, String path) {
        return request.getMethod().equals("GET")
                && !path.startsWith("/api/")
                && request.getHeaderString("HX-Request") == null;
    }

    /**
     * People are sent to the sign-in page and back afterwards, and keep what they have sent; scripts and the phone's sheet get a plain
     * 401.
     */
    private Response toSignIn(ContainerRequestContext request, String path) {
        if (!isPage(request, path)) {
            return KeptForms.kept(request, servlet, path, "/sign-in")
                    .or(() -> KeptForms.lost(request, servlet, path))
                    .orElseGet(() -> Problems.response(new WebRefusal.SignInFirst(), 401));
        }
        UriBuilder signIn = UriBuilder.fromPath("/sign-in").queryParam("to", "{to}");
        if (Credential.Kept.SESSION.in(servlet) != null) {
            signIn.queryParam("ended", "yes");
        }
        return Response.seeOther(signIn.build(asked(request, path))).build();
    }

    /** Where to go back to afterwards. */
    static String asked(ContainerRequestContext request, String path) {
        String query = request.getUriInfo().getRequestUri().getRawQuery();
        return query == null ? path : path + "?" + query;
    }
}
