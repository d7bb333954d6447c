package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.FindCustomers;
import eaveside.customers.FindCustomers.CustomerLine;
import eaveside.customers.MergeCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Merging a customer into another: first the other is chosen, then both are seen side by side. */
@Path("/customers/{id}/merge")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class MergeResource {
    private static final int FOUND = 20;

    private final ReadCustomer readCustomer;
    private final FindCustomers findCustomers;
    private final MergeCustomers mergeCustomers;
    private final Viewer viewer;

    @Inject
    public MergeResource(
            ReadCustomer readCustomer, FindCustomers findCustomers, MergeCustomers mergeCustomers, Viewer viewer) {
        this.readCustomer = readCustomer;
        this.findCustomers = findCustomers;
        this.mergeCustomers = mergeCustomers;
        this.viewer = viewer;
    }

    /**
     * @param  from      who goes
     * @param  into      who stays; null until chosen
     * @param  customers to choose from
     */
    public record MergePage(
            Customer from, @Nullable Customer into, String q, List<CustomerLine> customers, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "customers/merge.jte";
        }
    }

    @GET
    @Transactional
    public MergePage choose(
            @PathParam("id") String id,
            @QueryParam("into") @DefaultValue("") String into,
            @QueryParam("q") @DefaultValue("") String q) {
        return page(CustomerId.of(id), into, q, Fields.empty());
    }

    private MergePage page(CustomerId id, String into, String q, Fields fields) {
        Customer from = readCustomer.customer(id);
        return new MergePage(
                from,
                into.isEmpty() ? null : readCustomer.customer(CustomerId.of(into)),
                q,
                into.isEmpty() ? others(from, q) : List.of(),
                fields);
    }

    private List<CustomerLine> others(Customer from, String q) {
        return findCustomers.find(q, false, null, FOUND).rows().stream()
                .filter(other -> !other.id().equals(from.id()))
                .toList();
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response merge(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        CustomerId from = CustomerId.of(id);
        String into = fields.text("into");
        boolean merged = fields.run(
                () -> mergeCustomers.merge(new MergeCustomers.Merge(from, CustomerId.of(into), viewer.id())));
        if (!merged) {
            return Response.status(fields.status())
                    .entity(page(from, into, "", fields))
                    .build();
        }
        return Response.seeOther(URI.create("/customers/" + into + "?done=customers.merged"))
                .build();
    }
}
