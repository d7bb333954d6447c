package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.Address;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ReadCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** The form of a site. */
@Path("/customers/{customer}/sites")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class SiteResource {
    private final ReadCustomer readCustomer;
    private final SaveSite saveSite;
    private final Viewer viewer;

    @Inject
    public SiteResource(ReadCustomer readCustomer, SaveSite saveSite, Viewer viewer) {
        this.readCustomer = readCustomer;
        this.saveSite = saveSite;
        this.viewer = viewer;
    }

    public record SiteFormPage(CustomerId customer, String customerName, Fields fields, boolean isNew) implements Page {
        @Override
        public String template() {
            return "customers/site-form.jte";
        }

        public Map<String, String> labels(View view) {
            return Labels.of(
                    view, List.of("name"), Addresses.NAMES, List.of("accessNotes", "hazards", "waterOnSite", "active"));
        }
    }

    @GET
    @Path("new")
    @Transactional
    public SiteFormPage fresh(@PathParam("customer") String customer) {
        CustomerId id = CustomerId.of(customer);
        Map<String, String> values =
                new HashMap<>(Addresses.values(readCustomer.customer(id).billingAddress()));
        values.put("id", SiteId.next().toString());
        values.put("version", "0");
        values.put("active", "yes");
        return page(id, Fields.showing(values), true);
    }

    @GET
    @Path("{id}")
    @Transactional
    public SiteFormPage edit(@PathParam("customer") String customer, @PathParam("id") String id) {
        Site site = readCustomer.site(SiteId.of(id));
        Map<String, String> values = values(site);
        values.put("id", site.id().toString());
        values.put("version", String.valueOf(site.version()));
        return page(site.customerId(), Fields.showing(values), false);
    }

    private static Map<String, String> values(Site site) {
        Map<String, String> values = new HashMap<>(Addresses.values(site.address()));
        values.put("name", site.name());
        values.put("accessNotes", site.accessNotes());
        values.put("hazards", site.hazards());
        values.put("waterOnSite", site.waterOnSite() ? "yes" : "");
        values.put("active", site.active() ? "yes" : "");
        return values;
    }

    private SiteFormPage page(CustomerId customer, Fields fields, boolean isNew) {
        return new SiteFormPage(customer, readCustomer.customer(customer).name(), fields, isNew);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("customer") String customer, MultivaluedMap<String, String> form) {
        CustomerId owner = CustomerId.of(customer);
        Fields fields = Fields.of(form);
        SiteId id = new SiteId(fields.id("id"));
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String name = fields.text("name");
        Address address = Addresses.of(fields);
        boolean saved = fields.run(
                () -> saveSite.save(
                        new Site(
                                id,
                                owner,
                                name,
                                address,
                                fields.optional("accessNotes"),
                                fields.optional("hazards"),
                                fields.ticked("waterOnSite"),
                                fields.ticked("active"),
                                version),
                        viewer.id()),
                refusal -> refusal instanceof CustomersRefusal.EditedMeanwhile other
                                && other.theirs() instanceof Site theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), values(theirs)))
                        : Optional.empty());
        return saved
                ? Response.seeOther(URI.create("/customers/" + owner + "?done=customers.saved"))
                        .build()
                : Response.status(fields.status())
                        .entity(page(owner, fields, version == 0))
                        .build();
    }
}
