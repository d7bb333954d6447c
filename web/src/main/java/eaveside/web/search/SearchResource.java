package eaveside.web.search;

import eaveside.web.Page;
import eaveside.web.PagePart;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/** The search: what is found while somebody types, and the same as a page. */
@Path("/search")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class SearchResource extends PageResource {
    /** Of each type, below the field. */
    private static final int FEW = 4;

    /** Of each type, on the page. */
    private static final int MORE = 25;

    @Inject
    Search search;

    public record SearchPage(Hits hits) implements Page {}

    /** What lies below the field while somebody types. */
    public record HitsPage(Hits hits) implements PagePart {}

    /** Where just one thing is found as it was typed, that is opened. */
    @GET
    @Transactional
    public Response search(@QueryParam("q") @DefaultValue("") String text) {
        Hits hits = search.find(viewer.view(), text, MORE);
        return hits.spelled() && hits.count() == 1
                ? Respond.instead(hits.groups().getFirst().hits().getFirst().href())
                : Response.ok(new SearchPage(hits)).build();
    }

    @GET
    @Path("hits")
    @Transactional
    public HitsPage hits(@QueryParam("q") @DefaultValue("") String text) {
        return new HitsPage(search.find(viewer.view(), text, FEW));
    }
}
