package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.FindCustomers;
import eaveside.customers.MergeCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SaveContact;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Slice;
import eaveside.kernel.SurfaceId;
import eaveside.web.Json;
import eaveside.web.customers.CustomerJson.ContactBody;
import eaveside.web.customers.CustomerJson.CustomerBody;
import eaveside.web.customers.CustomerJson.CustomerWhole;
import eaveside.web.customers.CustomerJson.Line;
import eaveside.web.customers.CustomerJson.Lines;
import eaveside.web.customers.CustomerJson.Overtaken;
import eaveside.web.customers.CustomerJson.SiteBody;
import eaveside.web.customers.CustomerJson.SiteWhole;
import eaveside.web.customers.CustomerJson.SurfaceBody;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.function.Supplier;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Customers, their contacts, sites and surfaces for scripts. Ids are the client's own, so that everything can be sent again. */
@Path("/api/customers")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Customers")
public class CustomersApi {
    private static final int PAGE = 100;

    private final FindCustomers findCustomers;
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final SaveCustomer saveCustomer;
    private final MergeCustomers mergeCustomers;
    private final SaveContact saveContact;
    private final SaveSite saveSite;
    private final SaveSurface saveSurface;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public CustomersApi(
            FindCustomers findCustomers,
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            SaveCustomer saveCustomer,
            MergeCustomers mergeCustomers,
            SaveContact saveContact,
            SaveSite saveSite,
            SaveSurface saveSurface,
            Viewer viewer,
            Trail trail) {
        this.findCustomers = findCustomers;
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.saveCustomer = saveCustomer;
        this.mergeCustomers = mergeCustomers;
        this.saveContact = saveContact;
        this.saveSite = saveSite;
        this.saveSurface = saveSurface;
        this.viewer = viewer;
        this.trail = trail;
    }

    @GET
    @Transactional
    @Operation(summary = "Customers whose name, address or reach holds the words of 'q', by name")
    public Lines customers(
            @QueryParam("q") @DefaultValue("") String search,
            @QueryParam("all") @DefaultValue("false") boolean all,
            @QueryParam("after") @Nullable String after) {
        Slice<Line> page = findCustomers.find(search, !all, after, PAGE).map(Line::of);
        return new Lines(page.rows(), page.next());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A customer with contacts, sites and surfaces")
    public CustomerWhole customer(@PathParam("id") String id) {
        CustomerId customer = CustomerId.of(id);
        CustomerBody body = CustomerBody.of(readCustomer.customer(customer));
        List<Site> sites = readCustomer.sites(customer);
        Map<SiteId, List<Surface>> surfaces =
                readSurfaces.ofSites(sites.stream().map(Site::id).toList());
        return new CustomerWhole(
                body,
                readCustomer.contacts(customer).stream().map(ContactBody::of).toList(),
                sites.stream()
                        .map(site -> new SiteWhole(
                                SiteBody.of(site),
                                surfaces.getOrDefault(site.id(), List.of()).stream()
                                        .map(SurfaceBody::of)
                                        .toList()))
                        .toList());
    }

    /** @param into the id of the customer who is kept */
    public record NewMerge(@Nullable String into) {}

    /** Problem details (RFC 9457) of a customer who may be here already; with duplicates=allow it is saved. */
    public record MayBeKnown(
            String type, String title, int status, List<String> fields, List<Alike.Other> duplicates) {}

    @PUT
    @Path("{id}")
    @Operation(
            summary = "Adds a customer, or changes the version named; the same again changes nothing",
            description =
                    "A new customer with the phone, the email, or the name and address of another is answered with "
                            + "409 and these others, unless duplicates=allow.")
    public Response saveCustomer(
            @PathParam("id") String id,
            @QueryParam("duplicates") @DefaultValue("refuse") String duplicates,
            @Nullable CustomerBody body) {
        CustomerId customer = CustomerId.of(id);
        CustomerBody sent = Json.required("body", body);
        boolean all = ImportApi.is("duplicates", duplicates, "allow", "refuse");
        try {
            return saved(() -> CustomerBody.of(
                    all
                            ? saveCustomer.save(sent.read(customer), viewer.id())
                            : saveCustomer.saveUnlessKnown(sent.read(customer), viewer.id())));
        } catch (CustomersRefusal.PossibleDuplicate refusal) {
            return Response.status(refusal.kind().status())
                    .type("application/problem+json")
                    .entity(new MayBeKnown(
                            "urn:eaveside:refusal:" + refusal.code(),
                            refusal.text(),
                            refusal.kind().status(),
                            refusal.fields(),
                            refusal.duplicates().stream().map(Alike.Other::of).toList()))
                    .build();
        }
    }

    @POST
    @Path("{id}/merge")
    @Operation(
            summary = "Merges the customer into another; the same again changes nothing",
            description = "Posted documents keep the id that they bear; asked for by it, the customer kept answers.")
    public CustomerBody merge(@PathParam("id") String id, @Nullable NewMerge body) {
        CustomerId from = CustomerId.of(id);
        CustomerId into =
                CustomerId.of(Json.required("into", Json.required("body", body).into()));
        CustomerBody kept = CustomerBody.of(mergeCustomers.merge(new MergeCustomers.Merge(from, into, viewer.id())));
        trail.done("customer.merge", from + " into " + into);
        return kept;
    }

    @PUT
    @Path("{id}/contacts/{contact}")
    @Operation(summary = "Adds a contact, or changes the version named; the same again changes nothing")
    public Response saveContact(
            @PathParam("id") String id, @PathParam("contact") String contactId, @Nullable ContactBody body) {
        CustomerId customer = CustomerId.of(id);
        ContactId contact = ContactId.of(contactId);
        ContactBody sent = Json.required("body", body);
        return saved(() -> ContactBody.of(saveContact.save(sent.read(contact, customer), viewer.id())));
    }

    @PUT
    @Path("{id}/sites/{site}")
    @Operation(summary = "Adds a site, or changes the version named; the same again changes nothing")
    public Response saveSite(@PathParam("id") String id, @PathParam("site") String siteId, @Nullable SiteBody body) {
        CustomerId customer = readCustomer.customer(CustomerId.of(id)).id();
        SiteId site = SiteId.of(siteId);
        SiteBody sent = Json.required("body", body);
        return saved(() -> SiteBody.of(saveSite.save(sent.read(site, customer), viewer.id())));
    }

    @PUT
    @Path("{id}/sites/{site}/surfaces/{surface}")
    @Operation(summary = "Adds a surface, or changes the version named; the same again changes nothing")
    public Response saveSurface(
            @PathParam("id") String id,
            @PathParam("site") String siteId,
            @PathParam("surface") String surfaceId,
            @Nullable SurfaceBody body) {
        CustomerId customer = CustomerId.of(id);
        Site site = readCustomer.site(SiteId.of(siteId));
        if (!readCustomer.idsOf(customer).contains(site.customerId())) {
            throw new CustomersRefusal.NoSuchSite(siteId);
        }
        SurfaceId surface = SurfaceId.of(surfaceId);
        SurfaceBody sent = Json.required("body", body);
        return saved(() -> SurfaceBody.of(saveSurface.save(sent.read(surface, site.id()), viewer.id())));
    }

    private static Response saved(Supplier<Object> save) {
        try {
            return Response.ok(save.get()).build();
        } catch (CustomersRefusal.EditedMeanwhile refusal) {
            return Response.status(refusal.kind().status())
                    .type("application/problem+json")
                    .entity(Overtaken.of(refusal))
                    .build();
        }
    }
}
