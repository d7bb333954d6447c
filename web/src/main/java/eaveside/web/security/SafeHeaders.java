package eaveside.web.security;

import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.container.ContainerResponseContext;
import jakarta.ws.rs.container.ContainerResponseFilter;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.ext.Provider;

/** What every answer tells the browser: only our own files, no inline script, style or eval, no frames, no keeping. */
@Provider
public class SafeHeaders implements ContainerResponseFilter {
    @Override
    public void filter(ContainerRequestContext request, ContainerResponseContext response) {
        MultivaluedMap<String, Object> headers = response.getHeaders();
        headers.putSingle(
                "Content-Security-Policy",
                "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self';"
                        + " manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none';"
                        + " frame-ancestors 'none'");
        headers.putSingle("X-Content-Type-Options", "nosniff");
        headers.putSingle("Referrer-Policy", "same-origin");
        headers.putSingle("Cross-Origin-Opener-Policy", "same-origin");
        headers.putSingle("Permissions-Policy", "geolocation=(), microphone=(), payment=()");
        if (!headers.containsKey(HttpHeaders.CACHE_CONTROL)) {
            headers.putSingle(HttpHeaders.CACHE_CONTROL, "no-store");
        }
        headers.add(HttpHeaders.VARY, "HX-Request");
    }
}
