package eaveside.web.security;

import eaveside.access.Origin;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.inject.Inject;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.container.ResourceInfo;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.ext.Provider;
import java.lang.reflect.Method;
import java.net.URI;
import java.util.Locale;
import java.util.Set;

/**
 * Sees to it that no change stays off the audit log: where a resource did not tell it of a change under a name of its
 * own, the change is told under the names of the resource and its method, with the address that it led to.
 */
@Provider
@ApplicationScoped
public class AuditLogKeeper implements ContainerResponseFilter {
    private static final Set<String> CHANGING = Set.of("POST", "PUT", "DELETE");

    @Inject
    AuditLog auditLog;

    @Inject
    Origin origin;

    @Inject
    Viewer viewer;

    @Context
    ResourceInfo resource;

    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        Method method = resource.getResourceMethod();
        if (method != null
                && CHANGING.contains(request.getMethod())
                && !method.isAnnotationPresent(Untold.class)
                && !method.getDeclaringClass().isAnnotationPresent(Untold.class)
                && cameAbout(response)
                && viewer.user() != null
                && !auditLog.isTold()
                && !origin.isTold()) {
            URI location = response.getLocation();
            String subject = location == null ? request.getUriInfo().getPath() : location.getPath();
            auditLog.done(action(method), subject.replaceFirst("^/?", "/"));
        }
    }

    /** A form that went through leads on to another page; one that did not is shown again. Scripts are answered in data. */
    private static boolean cameAbout(ContainerResponseContext response) {
        int status = response.getStatus();
        boolean page =
                response.getMediaType() != null && MediaType.TEXT_HTML_TYPE.isCompatible(response.getMediaType());
        return status == Response.Status.SEE_OTHER.getStatusCode() || (status / 100 == 2 && !page);
    }

    private static String action(Method method) {
        String what = method.getDeclaringClass().getSimpleName().replaceFirst("(Resource|Pages|Api|Acts)$", "");
        return hyphened(what) + "." + hyphened(method.getName());
    }

    private static String hyphened(String name) {
        return name.replaceAll("(?<=[a-z])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
    }
}
