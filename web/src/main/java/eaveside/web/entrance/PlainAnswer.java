package eaveside.web.entrance;

import eaveside.web.Assets;
import jakarta.json.Json;
import jakarta.servlet.http.HttpServletRequest;
import jakarta.servlet.http.HttpServletResponse;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.jspecify.annotations.Nullable;

/**
 * An answer in a few plain words, where there can be no page: before and beside the resources, and without the database. A
 * problem (RFC 9457) for scripts.
 *
 * @param  code  of the problem
 * @param  again in how many seconds it may be tried again; null for no time
 */
public record PlainAnswer(
        int status, String code, String title, @Nullable Integer again) {
    public static PlainAnswer of(int status) {
        return new PlainAnswer(status, "refusal:web.failed", "That did not work", null);
    }

    /** The database is gone, which the launcher starts again. */
    public static PlainAnswer noDatabase() {
        return new PlainAnswer(
                503,
                "unavailable",
                "The database is not there at the moment. Nothing was changed. Try again in a few seconds",
                5);
    }

    public static PlainAnswer busy() {
        return new PlainAnswer(503, "busy", "Too much at this moment. Try again in a few seconds", 2);
    }

    /** Whether a script asks: for an address of theirs, or for anything but a page. */
    public static boolean isForScript(HttpServletRequest request, String path) {
        String accept = request.getHeader("Accept");
        return path.startsWith("/api/") || accept == null || !accept.contains("text/html");
    }

    public String type(boolean script) {
        return script ? "application/problem+json" : "text/html;charset=UTF-8";
    }

    /** @param  method of the request: a browser sends a form once more where its page is loaded again */
    public String body(boolean script, String method) {
        if (script) {
            return Json.createObjectBuilder()
                    .add("type", "urn:eaveside:" + code)
                    .add("title", title)
                    .add("status", status)
                    .build()
                    .toString();
        }
        String heading = again == null ? title : "Not at this moment";
        String further = again == null
                ? "<a href=\"/\">To the start page</a>"
                : title + ". "
                        + (method.equals("POST")
                                ? "Load this page again to send what you have entered once more."
                                : "Then load this page again.");
        return """
                <!DOCTYPE html><html lang="en"><meta charset="UTF-8">
                <meta name="viewport" content="width=device-width, initial-scale=1"><title>%1$s</title>
                <link rel="stylesheet" href="%2$s">
                <body class="desk"><main class="narrow"><h1>%1$s.</h1><p>%3$s</p></main></html>
                """.formatted(heading, Assets.url("eaveside.css"), further);
    }

    public void write(HttpServletRequest request, HttpServletResponse response, String path) throws IOException {
        boolean script = isForScript(request, path);
        byte[] bytes = body(script, request.getMethod()).getBytes(StandardCharsets.UTF_8);
        response.setStatus(status);
        if (again != null) {
            response.setHeader("Retry-After", again.toString());
        }
        response.setContentType(type(script));
        response.setContentLength(bytes.length);
        response.getOutputStream().write(bytes);
    }

    /** The same where the server itself has failed at an address. */
    public static void write(HttpServletRequest request, HttpServletResponse response, int status, String path)
            throws IOException {
        SafeAnswers.secure(request, response);
        of(status).write(request, response, path);
    }
}
