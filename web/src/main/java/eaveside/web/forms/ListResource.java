package eaveside.web.forms;

import eaveside.web.Xlsx;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;

/**
 * A resource whose address is a list: its page, and under {@code list.csv} and {@code list.xlsx} the same as a file. A resource says only what the
 * list is.
 *
 * @param <R> a row
 */
public abstract class ListResource<R> extends PageResource {
    /** What the list was asked for. */
    @Context
    protected UriInfo asked;

    protected abstract Listing<R> list();

    @GET
    @Transactional
    public ListPage<R> listed() {
        return list().page(asked);
    }

    @GET
    @Path("list.xlsx")
    @Produces(Xlsx.TYPE)
    @Transactional
    public Response spreadsheet() {
        return list().xlsx(asked, viewer.view());
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response file() {
        return list().csv(asked, viewer.view());
    }
}
