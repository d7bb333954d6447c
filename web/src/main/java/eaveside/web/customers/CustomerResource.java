package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.Contact;
import eaveside.customers.Customer;
import eaveside.customers.Duplicate;
import eaveside.customers.FindDuplicates;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;

/** One customer. */
@Path("/customers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class CustomerResource {
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final FindDuplicates findDuplicates;
    private final Viewer viewer;
    private final Names names;

    @Inject
    public CustomerResource(
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            FindDuplicates findDuplicates,
            Viewer viewer,
            Names names) {
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.findDuplicates = findDuplicates;
        this.viewer = viewer;
        this.names = names;
    }

    /** A site with its surfaces, and what is to be minded there. */
    public record SiteView(Site site, List<SurfaceView> surfaces, List<String> cautions) {}

    /** A surface with how it has been counted, the first count first. */
    public record SurfaceView(Surface surface, List<String> known, List<ReadSurfaces.SurfaceCount> history) {}

    /** @param  alike whom the customer may be the same as */
    public record CustomerPage(
            Customer customer, List<Contact> contacts, List<SiteView> sites, List<Duplicate> alike, Names names)
            implements Page {
        @Override
        public String template() {
            return "customers/customer.jte";
        }
    }

    @GET
    @Path("{id}")
    @Transactional
    public Response customer(@PathParam("id") String id) {
        CustomerId asked = CustomerId.of(id);
        Customer customer = readCustomer.customer(asked);
        return customer.id().equals(asked)
                ? Response.ok(page(customer)).build()
                : Response.seeOther(URI.create("/customers/" + customer.id())).build();
    }

    private CustomerPage page(Customer customer) {
        List<Site> sites = readCustomer.sites(customer.id());
        Map<SiteId, List<Surface>> surfaces =
                readSurfaces.ofSites(sites.stream().map(Site::id).toList());
        Map<SurfaceId, List<ReadSurfaces.SurfaceCount>> histories = readSurfaces.histories(surfaces.values().stream()
                .flatMap(List::stream)
                .map(Surface::id)
                .toList());
        View view = viewer.view();
        return new CustomerPage(
                customer,
                readCustomer.contacts(customer.id()),
                sites.stream()
                        .map(site -> {
                            List<Surface> there = surfaces.getOrDefault(site.id(), List.of());
                            return new SiteView(
                                    site,
                                    there.stream()
                                            .map(s -> new SurfaceView(
                                                    s, Known.of(view, s), histories.getOrDefault(s.id(), List.of())))
                                            .toList(),
                                    SiteCautions.of(view, site, there));
                        })
                        .toList(),
                findDuplicates.of(customer.id()),
                names);
    }
}
