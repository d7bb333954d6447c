package eaveside.web.entrance;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.util.Map;

/** What every answer tells the browser: only our own files, no inline script, style or eval, no frames, no keeping. */
final class SafeAnswers {
    /** By the name of the header. */
    static final Map<String, String> HEADERS = Map.of(
            "Content-Security-Policy",
            "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self';"
                    + " manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none';"
                    + " frame-ancestors 'none'",
            "X-Content-Type-Options",
            "nosniff",
            "Referrer-Policy",
            "same-origin",
            "Cross-Origin-Opener-Policy",
            "same-origin",
            "Cross-Origin-Resource-Policy",
            "same-origin",
            "Permissions-Policy",
            "geolocation=(), microphone=(), payment=()",
            "Cache-Control",
            "no-store",
            "Vary",
            "HX-Request");

    private SafeAnswers() {}

    static void secure(HttpServletRequest request, HttpServletResponse response) {
        HEADERS.forEach(response::setHeader);
        if (request.isSecure()) {
            response.setHeader("Strict-Transport-Security", "max-age=31536000; includeSubDomains");
        }
    }
}
