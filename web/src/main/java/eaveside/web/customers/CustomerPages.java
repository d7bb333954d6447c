package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.Duplicate;
import eaveside.customers.ReadCustomer;
import eaveside.customers.SaveCustomer;
import eaveside.kernel.CustomerId;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
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
import jakarta.ws.rs.core.Response;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;

/** The form of a customer. */
@Path("/customers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class CustomerPages {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    SaveCustomer saveCustomer;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /** @param  alike whom a new customer may be the same as, once that kept it from being saved */
    public record CustomerForm(Form<Customer> form, List<Duplicate> alike) implements Page {
        @Override
        public String template() {
            return "customers/customer-form.jte";
        }
    }

    @GET
    @Path("new")
    @Transactional
    public CustomerForm fresh() {
        return page(viewer.form(
                Customer.class,
                Map.of(
                        "id", CustomerId.next().toString(),
                        "type", CustomerType.HOUSEHOLD.name(),
                        "paymentTermDays", "14",
                        "country", books.company().address().country(),
                        "active", "yes")));
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public CustomerForm edit(@PathParam("id") CustomerId id) {
        return page(viewer.form(readCustomer.customer(id)));
    }

    @POST
    @Path("save")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<Customer> form) {
        List<Duplicate> alike = new ArrayList<>();
        return form.run(customer -> save(customer, form.fields().ticked("alikeToo"), alike))
                ? Respond.to("/customers/" + form.fields().typed("id"), "customers.saved")
                : Respond.again(form.fields(), new CustomerForm(form.labeled("customers"), alike));
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

    private static CustomerForm page(Form<Customer> form) {
        return new CustomerForm(form.labeled("customers"), List.of());
    }
}
