package eaveside.web.customers;

import eaveside.customers.Customer;
import eaveside.customers.CustomerLine;
import eaveside.customers.Duplicate;
import eaveside.customers.FindCustomers;
import eaveside.customers.FindDuplicates;
import eaveside.customers.ImportColumn;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceCount;
import eaveside.customers.WholeCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SurfaceId;
import eaveside.web.Csv;
import eaveside.web.Link;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Customers: found while one types, and seen with all that belongs to them. */
@Path("/customers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class CustomerPages extends ListResource<CustomerLine> {
    /** Of the timeline at first; each further look doubles it. */
    private static final int ROWS = 30;

    private static final int MOST_ROWS = 1920;

    @Inject
    FindCustomers findCustomers;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    FindDuplicates findDuplicates;

    @Inject
    AtAGlance atAGlance;

    @Inject
    Timeline timeline;

    @Inject
    Names names;

    @Override
    protected Listing<CustomerLine> list() {
        return Listing.<CustomerLine>of(
                        "customers",
                        "/customers",
                        query -> findCustomers.find(query.search(), !query.isOn("all"), query.after(), query.size()))
                .opening("name", customer -> "/customers/" + customer.id())
                .tagged("inactive", customer -> !customer.active())
                .columns("type")
                .column("address", CustomerLine::streetAndCity)
                .columns("phone", "email")
                .searched()
                .toggle("all")
                .action("new", "/customers/new")
                .quietly("import", "/customers/import");
    }

    /** The same list with the columns that the import reads, so that the file can be imported. */
    @Override
    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response file() {
        List<CustomerId> ids = list().all(asked).stream().map(CustomerLine::id).toList();
        Map<CustomerId, Customer> customers = readCustomer.customers(ids);
        return Csv.download(
                "customers",
                ImportColumn.ofCustomer().stream().map(ImportColumn::title).toList(),
                ids.stream()
                        .map(id -> ImportColumn.cells(Objects.requireNonNull(customers.get(id))))
                        .toList());
    }

    /**
     * One customer.
     *
     * @param  histories how each surface has been counted, the first count first
     * @param  duplicates whom the customer may be the same as
     * @param  shown      what of the timeline is shown; null for everything
     * @param  more       the address of a longer timeline; null where all is shown
     */
    public record CustomerPage(
            WholeCustomer whole,
            Map<SurfaceId, List<SurfaceCount>> histories,
            List<Duplicate> duplicates,
            AtAGlance.Facts glance,
            List<Timeline.Row> timeline,
            Timeline.@Nullable Type shown,
            @Nullable String more,
            Names names)
            implements Page {}

    @GET
    @Path("{id}")
    @Transactional
    public Response customer(
            @PathParam("id") CustomerId asked,
            @QueryParam("show") Timeline.@Nullable Type shown,
            @QueryParam("rows") @DefaultValue("0") int rows) {
        WholeCustomer whole = readCustomer.whole(asked);
        CustomerId id = whole.customer().id();
        if (!id.equals(asked)) {
            return Response.seeOther(URI.create("/customers/" + id)).build();
        }
        List<SurfaceId> surfaces = whole.sites().stream()
                .flatMap(site -> site.surfaces().stream())
                .map(Surface::id)
                .toList();
        int most = Math.clamp(rows, ROWS, MOST_ROWS);
        List<Timeline.Row> timeline = this.timeline.of(viewer.view(), id, shown, most);
        return Response.ok(new CustomerPage(
                        whole,
                        readSurfaces.histories(surfaces),
                        findDuplicates.of(id),
                        atAGlance.of(id),
                        timeline,
                        shown,
                        timeline.size() < most || most == MOST_ROWS
                                ? null
                                : new Link("/customers/" + id)
                                        .with("show", shown)
                                        .with("rows", most * 2)
                                        .toString(),
                        names))
                .build();
    }
}
