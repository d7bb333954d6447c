package eaveside.web.security;

import jakarta.servlet.http.HttpServletRequest;
import jakarta.ws.rs.container.ContainerRequestContext;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Answers a form that came too late with a page that holds it ({@link KeptFormPage}). */
final class KeptForms {
    /** Forms with passwords, which no page holds, and sheets, which the phone keeps by itself. */
    private static final List<String> LEFT_OUT =
            List.of("/account", "/settings/users", "/sign-in", "/sign-out", "/sheets");

    private KeptForms() {}

    /**
     * Nothing where it is no form of ours, holds nothing or cannot be read: what another site sends must not come back as ours to be sent
     * again.
     *
     * @param first where its sender does what is to be done before
     */
    static Optional<Response> kept(
            ContainerRequestContext request, HttpServletRequest servlet, String path, String first) {
        boolean keeps = request.getMethod().equals("POST")
                && isFromBrowser(request, path)
                && MediaType.APPLICATION_FORM_URLENCODED_TYPE.isCompatible(request.getMediaType())
                && LEFT_OUT.stream().noneMatch(path::startsWith)
                && CrossSite.isOwn(servlet);
        if (!keeps) {
            return Optional.empty();
        }
        try {
            byte[] body = request.getEntityStream().readAllBytes();
            return body.length == 0
                    ? Optional.empty()
                    : Optional.of(answer(KeptFormPage.of(Guard.asked(request, path), body, first)));
        } catch (IOException | IllegalArgumentException e) {
            return Optional.empty();
        }
    }

    /** What is kept nowhere is told to be lost, with the way back; nothing for what no person sent from a page. */
    static Optional<Response> lost(ContainerRequestContext request, HttpServletRequest servlet, String path) {
        return request.getMethod().equals("POST") && isFromBrowser(request, path) && !path.startsWith("/sheets")
                ? Optional.of(answer(KeptFormPage.lost(cameFrom(servlet))))
                : Optional.empty();
    }

    private static Response answer(KeptFormPage page) {
        return Response.status(401).type(MediaType.TEXT_HTML_TYPE).entity(page).build();
    }

    /** The page of ours that the form stood on; the start page where that is not told. */
    private static String cameFrom(HttpServletRequest servlet) {
        try {
            URI page = new URI(Objects.requireNonNullElse(servlet.getHeader("Referer"), ""));
            boolean ours = Objects.equals(page.getRawAuthority(), servlet.getHeader("Host"))
                    && page.getRawPath() != null
                    && page.getRawPath().startsWith("/")
                    && !page.getRawPath().startsWith("/sign-in");
            return ours ? page.getRawPath() + (page.getRawQuery() == null ? "" : "?" + page.getRawQuery()) : "/";
        } catch (URISyntaxException e) {
            return "/";
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
