package eaveside.web.customers;

import eaveside.customers.Customer;
import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.MergeCustomers;
import eaveside.customers.MergeCustomers.Merge;
import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
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
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Merging a customer into another: first the other is chosen, then both are seen side by side. */
@Path("/customers/{from}/merge")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class MergeResource {
    private static final int FOUND = 20;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    FindCustomers findCustomers;

    @Inject
    MergeCustomers mergeCustomers;

    /**
     * @param  from      who goes
     * @param  into      who stays; null until chosen
     * @param  customers to choose from
     */
    public record MergePage(
            Customer from, @Nullable Customer into, String q, List<CustomerLine> customers, Fields fields)
            implements Page {}

    @GET
    @Transactional
    public MergePage choose(
            @PathParam("from") CustomerId from,
            @QueryParam("into") @Nullable CustomerId into,
            @QueryParam("q") @DefaultValue("") String q) {
        return page(from, into, q, Fields.empty());
    }

    private MergePage page(CustomerId from, @Nullable CustomerId into, String q, Fields fields) {
        Customer merged = readCustomer.customer(from);
        return new MergePage(
                merged,
                into == null ? null : readCustomer.customer(into),
                q,
                into != null
                        ? List.of()
                        : findCustomers.find(q, false, null, FOUND).rows().stream()
                                .filter(other -> !other.id().equals(merged.id()))
                                .toList(),
                fields);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response merge(@PathParam("from") CustomerId from, Form<Merge> form) {
        String into = form.fields().typed("into");
        return form.labeled("customers").run(mergeCustomers::merge)
                ? Respond.to("/customers/" + into, "customers.merged")
                : Respond.again(
                        form.fields(), page(from, into.isBlank() ? null : CustomerId.of(into), "", form.fields()));
    }
}
