package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.Address;
import eaveside.customers.Contact;
import eaveside.customers.Customer;
import eaveside.customers.CustomerKind;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.Duplicate;
import eaveside.customers.FindDuplicates;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SaveCustomer;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.ledger.Books;
import eaveside.web.Names;
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
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** One customer: the page and its form. */
@Path("/customers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class CustomerResource {
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final SaveCustomer saveCustomer;
    private final FindDuplicates findDuplicates;
    private final Books books;
    private final Viewer viewer;
    private final Names names;

    @Inject
    public CustomerResource(
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            SaveCustomer saveCustomer,
            FindDuplicates findDuplicates,
            Books books,
            Viewer viewer,
            Names names) {
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.saveCustomer = saveCustomer;
        this.findDuplicates = findDuplicates;
        this.books = books;
        this.viewer = viewer;
        this.names = names;
    }

    /** A site with its surfaces, and what is to be minded there. */
    public record SiteView(Site site, List<SurfaceView> surfaces, List<String> cautions) {}

    /** A surface with how it has been counted, the first count first. */
    public record SurfaceView(Surface surface, List<String> known, List<ReadSurfaces.SurfaceCount> history) {}

    /** @param alike whom the customer may be the same as */
    public record CustomerPage(
            Customer customer, List<Contact> contacts, List<SiteView> sites, List<Duplicate> alike, Names names)
            implements Page {
        @Override
        public String template() {
            return "customers/customer.jte";
        }
    }

    /** @param alike whom a new customer may be the same as, once that kept it from being saved */
    public record CustomerFormPage(Fields fields, boolean isNew, List<Duplicate> alike) implements Page {
        @Override
        public String template() {
            return "customers/customer-form.jte";
        }

        public Map<String, String> labels(View view) {
            return Labels.of(
                    view,
                    List.of("name", "kind", "phone", "email", "paymentTermDays"),
                    Addresses.NAMES,
                    List.of("note", "active"));
        }

        public Map<String, String> kinds(View view) {
            Map<String, String> kinds = new LinkedHashMap<>();
            for (CustomerKind kind : CustomerKind.values()) {
                kinds.put(kind.name(), view.t("customers.kind", kind));
            }
            return kinds;
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

    @GET
    @Path("new")
    @Transactional
    public CustomerFormPage fresh() {
        return new CustomerFormPage(
                Fields.showing(Map.of(
                        "id",
                        CustomerId.next().toString(),
                        "version",
                        "0",
                        "kind",
                        CustomerKind.HOUSEHOLD.name(),
                        "paymentTermDays",
                        "14",
                        "country",
                        books.company().address().country(),
                        "active",
                        "yes")),
                true,
                List.of());
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public CustomerFormPage edit(@PathParam("id") String id) {
        Customer c = readCustomer.customer(CustomerId.of(id));
        Map<String, String> values = values(c);
        values.put("id", c.id().toString());
        values.put("version", String.valueOf(c.version()));
        return new CustomerFormPage(Fields.showing(values), false, List.of());
    }

    private static Map<String, String> values(Customer c) {
        Map<String, String> values = new HashMap<>();
        values.put("name", c.name());
        values.put("kind", c.kind().name());
        values.put("email", c.email());
        values.put("phone", c.phone());
        values.put("paymentTermDays", String.valueOf(c.paymentTermDays()));
        values.put("note", c.note());
        values.put("active", c.active() ? "yes" : "");
        values.putAll(Addresses.values(c.billingAddress()));
        return values;
    }

    @POST
    @Path("save")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> form) {
        Fields fields = Fields.of(form);
        CustomerId id = new CustomerId(fields.id("id"));
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String name = fields.text("name");
        CustomerKind kind = fields.choice("kind", CustomerKind.class);
        int term = fields.integer("paymentTermDays", 0, Customer.LONGEST_TERM_DAYS);
        Address address = Addresses.of(fields);
        List<Duplicate> alike = new ArrayList<>();
        boolean saved = fields.run(
                () -> save(
                        new Customer(
                                id,
                                name,
                                kind == null ? CustomerKind.HOUSEHOLD : kind,
                                address,
                                fields.optional("email"),
                                fields.optional("phone"),
                                term,
                                fields.optional("note"),
                                fields.ticked("active"),
                                version),
                        fields.ticked("alikeToo"),
                        alike),
                refusal -> refusal instanceof CustomersRefusal.EditedMeanwhile other
                                && other.theirs() instanceof Customer theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), values(theirs)))
                        : Optional.empty());
        return saved
                ? Response.seeOther(URI.create("/customers/" + id + "?done=customers.saved"))
                        .build()
                : Response.status(fields.status())
                        .entity(new CustomerFormPage(fields, version == 0, alike))
                        .build();
    }

    private void save(Customer customer, boolean alikeToo, List<Duplicate> alike) {
        try {
            if (alikeToo) {
                saveCustomer.save(customer, viewer.id());
            } else {
                saveCustomer.saveUnlessKnown(customer, viewer.id());
            }
        } catch (CustomersRefusal.PossibleDuplicate refusal) {
            alike.addAll(refusal.duplicates());
            throw refusal;
        }
    }
}
