package eaveside.web.security;

import eaveside.access.AccessRefusal;
import eaveside.access.AuditEvent;
import eaveside.access.AuthenticateToken;
import eaveside.access.Origin;
import eaveside.access.RecordAudit;
import eaveside.access.ResumeSession;
import eaveside.access.User;
import eaveside.kernel.UserId;
import jakarta.annotation.Priority;
import jakarta.annotation.security.PermitAll;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpSession;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.SecurityContext;
import jakarta.ws.rs.core.UriBuilder;
import jakarta.ws.rs.ext.Provider;
import java.net.URI;
import java.security.Principal;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
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
    static final String SESSION_USER = "eaveside.user";
    static final String SESSION_CREDENTIALS = "eaveside.credentials";

    @Inject
    Viewer viewer;

    @Inject
    ResumeSession resumeSession;

    @Inject
    AuthenticateToken authenticateToken;

    @Inject
    RecordAudit recordAudit;

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
        Optional<User> user;
        try {
            user = byToken(request).or(this::bySession);
        } catch (AccessRefusal.BadToken refusal) {
            request.abortWith(Problems.response(refusal, 401));
            return;
        }
        user.ifPresent(viewer::signedInAs);
        if (isOpen()) {
            return;
        }
        if (user.isEmpty()) {
            request.abortWith(toSignIn(request, path));
            return;
        }
        request.setSecurityContext(new SignedIn(user.get(), request.getSecurityContext()));
        RolesAllowed allowed = allowed();
        if (allowed == null
                || Stream.of(allowed.value()).noneMatch(request.getSecurityContext()::isUserInRole)
                || !sees()) {
            recordAudit.record(AuditEvent.refused(
                            "access." + request.getMethod().toLowerCase(Locale.ROOT),
                            user.get().id(),
                            path)
                    .from(servlet.getRemoteAddr()));
            throw new WebRefusal.NotForYourRole();
        }
    }

    private Optional<User> byToken(ContainerRequestContext request) {
        String header = request.getHeaderString(HttpHeaders.AUTHORIZATION);
        if (header == null || !header.startsWith("Bearer ")) {
            return Optional.empty();
        }
        request.setProperty(CrossSite.BY_TOKEN, true);
        return Optional.of(authenticateToken.authenticate(header.substring("Bearer ".length())));
    }

    private Optional<User> bySession() {
        HttpSession session = servlet.getSession(false);
        return session != null
                        && session.getAttribute(SESSION_USER) instanceof String id
                        && session.getAttribute(SESSION_CREDENTIALS) instanceof Integer credentials
                ? resumeSession.resume(UserId.of(id), credentials)
                : Optional.empty();
    }

    /** The signed-in user as the platform knows one. */
    private record SignedIn(User user, SecurityContext before) implements SecurityContext {
        @Override
        public Principal getUserPrincipal() {
            return user::username;
        }

        @Override
        public boolean isUserInRole(String role) {
            return user.role().name().equals(role);
        }

        @Override
        public boolean isSecure() {
            return before.isSecure();
        }

        @Override
        public @Nullable String getAuthenticationScheme() {
            return before.getAuthenticationScheme();
        }
    }

    private boolean isOpen() {
        return resource.getResourceMethod().isAnnotationPresent(PermitAll.class)
                || (resource.getResourceClass().isAnnotationPresent(PermitAll.class)
                        && !resource.getResourceMethod().isAnnotationPresent(RolesAllowed.class));
    }

    private @Nullable RolesAllowed allowed() {
        RolesAllowed own = resource.getResourceMethod().getAnnotation(RolesAllowed.class);
        return own != null ? own : resource.getResourceClass().getAnnotation(RolesAllowed.class);
    }

    private boolean sees() {
        Sees own = resource.getResourceMethod().getAnnotation(Sees.class);
        Sees needed = own != null ? own : resource.getResourceClass().getAnnotation(Sees.class);
        return needed == null || viewer.sees(needed.value());
    }

    /** People are sent to the sign-in page and back afterwards; scripts and the phone's sheet get a plain 401. */
    private static Response toSignIn(ContainerRequestContext request, String path) {
        boolean page = request.getMethod().equals("GET")
                && !path.startsWith("/api/")
                && request.getHeaderString("HX-Request") == null;
        if (!page) {
            return Problems.response(new WebRefusal.SignInFirst(), 401);
        }
        URI back = UriBuilder.fromPath("/sign-in")
                .queryParam("to", "{to}")
                .build(
                        request.getUriInfo().getRequestUri().getRawQuery() == null
                                ? path
                                : path + "?"
                                        + request.getUriInfo().getRequestUri().getRawQuery());
        return Response.seeOther(back).build();
    }
}
