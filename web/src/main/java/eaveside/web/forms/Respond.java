package eaveside.web.forms;

import eaveside.web.Page;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;

/** How a form is answered: a redirect once it went through, the form again with its errors where it did not. */
public final class Respond {
    private Respond() {}

    /**
     * Leads on to another page, which says what was done.
     *
     * @param  done key of the message to show there
     */
    public static Response to(String path, String done) {
        return Response.seeOther(
                        UriBuilder.fromUri(path).queryParam("done", done).build())
                .build();
    }

    /** Leads on to what stands in the place of the page that was asked for. */
    public static Response instead(String path) {
        return Response.seeOther(UriBuilder.fromUri(path).build()).build();
    }

    /** Shows the form again, under the status that its errors have. */
    public static Response again(Fields fields, Page page) {
        return Response.status(fields.status()).entity(page).build();
    }

    /** A file that the browser shows in its own window, and stores under the name where it cannot. */
    public static Response inline(byte[] file, String type, String name) {
        return Response.ok(file, type)
                .header(HttpHeaders.CONTENT_DISPOSITION, "inline; filename=\"" + name + "\"")
                .build();
    }
}
