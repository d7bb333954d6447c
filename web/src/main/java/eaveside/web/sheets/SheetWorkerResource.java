package eaveside.web.sheets;

import eaveside.web.AssetResource;
import jakarta.annotation.security.PermitAll;
import jakarta.enterprise.context.Dependent;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;

/** The worker that lets a sheet's page reload without signal. It lies at the root, for a worker rules what is below it. */
@Path("/sheet-worker.js")
@Dependent
@PermitAll
public class SheetWorkerResource {
    @GET
    public Response worker() {
        return Response.ok(AssetResource.read("sheet-worker.js"))
                .type("text/javascript;charset=UTF-8")
                .header(HttpHeaders.CACHE_CONTROL, "no-cache")
                .build();
    }
}
