package eaveside.web.customers;

import eaveside.customers.Contact;
import eaveside.customers.Customer;
import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.MergeCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.customers.SaveContact;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.WholeCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Slice;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
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
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Customers, their contacts, sites and surfaces for scripts. Ids are the client's own, so that everything can be sent again. */
@Path("/api/customers")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
@Tag(name = "Customers")
public class CustomersApi {
    private static final int PAGE = 100;

    @Inject
    FindCustomers findCustomers;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    SaveCustomer saveCustomer;

    @Inject
    MergeCustomers mergeCustomers;

    @Inject
    SaveContact saveContact;

    @Inject
    SaveSite saveSite;

    @Inject
    SaveSurface saveSurface;

    @Inject
    Viewer viewer;

    /** A page of the list; ask for more with {@code after=next}. */
    public record Lines(
            List<CustomerLine> customers, @Nullable String next) {}

    @GET
    @Transactional
    @Operation(summary = "Customers whose name, address or reach holds the words of 'q', by name")
    public Lines customers(
            @QueryParam("q") @DefaultValue("") String search,
            @QueryParam("all") boolean all,
            @QueryParam("after") @Nullable String after) {
        Slice<CustomerLine> page = findCustomers.find(search, !all, after, PAGE);
        return new Lines(page.rows(), page.next());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A customer with contacts, sites and surfaces")
    public WholeCustomer customer(@PathParam("id") CustomerId id) {
        return readCustomer.whole(id);
    }

    @PUT
    @Path("{id}")
    @Operation(
            summary = "Adds a customer, or changes the version named; the same again changes nothing",
            description =
                    "A new customer with the phone, the email, or the name and address of another is answered with "
                            + "409 and these others, unless duplicates=allow.")
    public Customer saveCustomer(
            @QueryParam("duplicates") @DefaultValue("refuse") Duplicates duplicates, Customer customer) {
        return duplicates == Duplicates.ALLOW
                ? saveCustomer.save(customer, viewer.id())
                : saveCustomer.saveUnlessKnown(customer, viewer.id());
    }

    @POST
    @Path("{from}/merge")
    @Operation(
            summary = "Merges the customer into another; the same again changes nothing",
            description = "Posted documents keep the id that they bear; asked for by it, the customer kept answers.")
    public Customer merge(MergeCustomers.Merge merge) {
        return mergeCustomers.merge(merge);
    }

    @PUT
    @Path("{customer}/contacts/{id}")
    @Operation(summary = "Adds a contact, or changes the version named; the same again changes nothing")
    public Contact saveContact(Contact contact) {
        return saveContact.save(contact, viewer.id());
    }

    @PUT
    @Path("{customer}/sites/{id}")
    @Operation(summary = "Adds a site, or changes the version named; the same again changes nothing")
    public Site saveSite(Site site) {
        return saveSite.save(site, viewer.id());
    }

    @PUT
    @Path("{customer}/sites/{site}/surfaces/{id}")
    @Operation(summary = "Adds a surface, or changes the version named; the same again changes nothing")
    public Surface saveSurface(@PathParam("customer") CustomerId customer, Surface surface) {
        if (!readCustomer
                .idsOf(customer)
                .contains(readCustomer.site(surface.site()).customer())) {
            throw new KernelRefusal.NotFound("site", surface.site());
        }
        return saveSurface.save(surface, viewer.id());
    }
}
