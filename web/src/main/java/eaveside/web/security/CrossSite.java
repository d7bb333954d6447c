package eaveside.web.security;

import jakarta.annotation.Priority;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.Priorities;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerRequestFilter;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.ext.Provider;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Refuses changes that a page of another site sent with our visitor's cookie. Every browser says where a form came
 * from (Sec-Fetch-Site, or Origin in older ones), so a change that says neither and carries no bearer token is refused
 * too.
 */
@Provider
@ApplicationScoped
@Priority(Priorities.AUTHENTICATION + 100)
public class CrossSite implements ContainerRequestFilter {
    static final String BY_TOKEN = "eaveside.by-token";

    private static final Set<String> SAFE = Set.of("GET", "HEAD", "OPTIONS");

    @Context
    HttpServletRequest servlet;

    @Override
    public void filter(ContainerRequestContext request) {
        if (SAFE.contains(request.getMethod()) || Boolean.TRUE.equals(request.getProperty(BY_TOKEN))) {
            return;
        }
        if (!isOwn(servlet)) {
            throw new WebRefusal.FromElsewhere();
        }
    }

    /** Whether it comes from a page of ours. */
    static boolean isOwn(HttpServletRequest servlet) {
        String site = servlet.getHeader("Sec-Fetch-Site");
        return site != null ? site.equals("same-origin") : isOwn(servlet, servlet.getHeader("Origin"));
    }

    private static boolean isOwn(HttpServletRequest servlet, @Nullable String origin) {
        try {
            return origin != null && (servlet.getScheme() + "://" + servlet.getHeader("Host")).equalsIgnoreCase(origin);
        } catch (RuntimeException e) {
            return false; // "null", or nothing that could be an origin
        }
    }
}
