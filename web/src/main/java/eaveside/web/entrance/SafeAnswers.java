package eaveside.web.entrance;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;

/** What every answer tells the browser: only our own files, no inline script, style or eval, no frames, no keeping. */
final class SafeAnswers {
    private SafeAnswers() {}

    static void secure(HttpServletRequest request, HttpServletResponse response) {
        response.setHeader(
                "Content-Security-Policy",
                "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; connect-src 'self';"
                        + " manifest-src 'self'; worker-src 'self'; form-action 'self'; base-uri 'none';"
                        + " frame-ancestors 'none'");
        response.setHeader("X-Content-Type-Options", "nosniff");
        response.setHeader("Referrer-Policy", "same-origin");
        response.setHeader("Cross-Origin-Opener-Policy", "same-origin");
        response.setHeader("Cross-Origin-Resource-Policy", "same-origin");
        response.setHeader("Permissions-Policy", "geolocation=(), microphone=(), payment=()");
        response.setHeader("Cache-Control", "no-store");
        response.setHeader("Vary", "HX-Request");
        if (request.isSecure()) {
            response.setHeader("Strict-Transport-Security", "max-age=31536000; includeSubDomains");
        }
    }
}
