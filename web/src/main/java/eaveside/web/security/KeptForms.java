package eaveside.web.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.util.List;
import java.util.Optional;

/** Answers a form that came too late with a page that holds it ({@link KeptFormPage}). */
final class KeptForms {
    /** Forms with passwords, which no page holds, and sheets, which the phone keeps by itself. */
    private static final List<String> LEFT_OUT =
            List.of("/account", "/settings/users", "/sign-in", "/sign-out", "/sheets");

    private KeptForms() {}

    /** Nothing where it is no form of ours, or cannot be read: what another site sends must not come back as ours to be sent again. */
    static Optional<Response> of(ContainerRequestContext request, HttpServletRequest servlet, String path) {
        boolean keeps = request.getMethod().equals("POST")
                && isFromBrowser(request, path)
                && MediaType.APPLICATION_FORM_URLENCODED_TYPE.isCompatible(request.getMediaType())
                && LEFT_OUT.stream().noneMatch(path::startsWith)
                && CrossSite.isOwn(servlet);
        if (!keeps) {
            return Optional.empty();
        }
        try {
            KeptFormPage page = KeptFormPage.of(
                    Guard.asked(request, path), request.getEntityStream().readAllBytes());
            return Optional.of(Response.status(401)
                    .type(MediaType.TEXT_HTML_TYPE)
                    .entity(page)
                    .build());
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** Whether a whole page is wanted in answer, rather than data or a part of one. */
    static boolean isFromBrowser(ContainerRequestContext request, String path) {
        String accept = request.getHeaderString("Accept");
        return !path.startsWith("/api/")
                && request.getHeaderString("HX-Request") == null
                && accept != null
                && accept.contains("text/html");
    }
}
