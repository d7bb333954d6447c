package eaveside.web.sheets;

import jakarta.annotation.security.PermitAll;
import jakarta.enterprise.context.Dependent;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.util.Objects;

/** The worker that lets a sheet's page reload without signal. It lies at the root, for a worker rules what is below it. */
@Path("/sheet-worker.js")
@Dependent
@PermitAll
public class SheetWorkerResource {
    @GET
    public Response worker() {
        try (InputStream in =
                Objects.requireNonNull(SheetWorkerResource.class.getResourceAsStream("/assets/sheet-worker.js"))) {
            return Response.ok(in.readAllBytes())
                    .type("text/javascript;charset=UTF-8")
                    .header(HttpHeaders.CACHE_CONTROL, "no-cache")
                    .build();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
