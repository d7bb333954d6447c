package eaveside.web.customers;

import eaveside.customers.Address;
import eaveside.customers.Contact;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.Duplicate;
import eaveside.customers.ReadCustomer;
import eaveside.customers.SaveContact;
import eaveside.customers.SaveCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.Site;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
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

/** The forms of a customer, and of the contacts and sites that belong to it. */
@Path("/customers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class CustomerForms {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    SaveCustomer saveCustomer;

    @Inject
    SaveContact saveContact;

    @Inject
    SaveSite saveSite;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /** @param  duplicates whom a new customer may be the same as, once that kept it from being saved */
    public record CustomerForm(Form<Customer> form, List<Duplicate> duplicates) implements Page {}

    public record ContactForm(CustomerId customer, String customerName, Form<Contact> form) implements Page {}

    public record SiteForm(CustomerId customer, String customerName, Form<Site> form) implements Page {}

    @GET
    @Path("new")
    @Transactional
    public CustomerForm fresh() {
        Map<String, String> usual = Map.of(
                "type", CustomerType.HOUSEHOLD.name(),
                "paymentTermDays", "14",
                "country", books.company().address().country());
        return page(viewer.fresh(Customer.class, usual), List.of());
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public CustomerForm edit(@PathParam("id") CustomerId id) {
        return page(viewer.form(readCustomer.customer(id)), List.of());
    }

    @POST
    @Path("save")
    public Response save(Form<Customer> form) {
        List<Duplicate> duplicates = new ArrayList<>();
        return form.run(customer -> save(customer, form.fields().ticked("allowDuplicates"), duplicates))
                ? Respond.to("/customers/" + form.fields().typed("id"), "customers.saved")
                : Respond.again(form.fields(), page(form, duplicates));
    }

    private void save(Customer customer, boolean allowDuplicates, List<Duplicate> duplicates) {
        try {
            if (allowDuplicates) {
                saveCustomer.save(customer, viewer.id());
            } else {
                saveCustomer.saveUnlessKnown(customer, viewer.id());
            }
        } catch (CustomersRefusal.PossibleDuplicate refusal) {
            duplicates.addAll(refusal.duplicates());
            throw refusal;
        }
    }

    private static CustomerForm page(Form<Customer> form, List<Duplicate> duplicates) {
        return new CustomerForm(form.labeled("customers"), duplicates);
    }

    @GET
    @Path("{customer}/contacts/new")
    @Transactional
    public ContactForm freshContact(@PathParam("customer") CustomerId customer) {
        return contact(customer, viewer.fresh(Contact.class));
    }

    @GET
    @Path("{customer}/contacts/{id}")
    @Transactional
    public ContactForm editContact(@PathParam("customer") CustomerId customer, @PathParam("id") ContactId id) {
        return contact(customer, viewer.form(readCustomer.contact(customer, id)));
    }

    @POST
    @Path("{customer}/contacts")
    public Response saveContact(@PathParam("customer") CustomerId customer, Form<Contact> form) {
        return form.run(contact -> saveContact.save(contact, viewer.id()))
                ? Respond.to("/customers/" + customer, "customers.saved")
                : Respond.again(form.fields(), contact(customer, form));
    }

    private ContactForm contact(CustomerId customer, Form<Contact> form) {
        return new ContactForm(customer, readCustomer.customer(customer).name(), form.labeled("customers"));
    }

    /** Most sites lie where their invoices go. */
    @GET
    @Path("{customer}/sites/new")
    @Transactional
    public SiteForm freshSite(@PathParam("customer") CustomerId customer) {
        Address address = readCustomer.customer(customer).address();
        Map<String, String> usual = Map.of(
                "street", address.street(),
                "city", address.city(),
                "region", address.region(),
                "zipCode", address.zipCode(),
                "country", address.country());
        return site(customer, viewer.fresh(Site.class, usual));
    }

    @GET
    @Path("{customer}/sites/{id}")
    @Transactional
    public SiteForm editSite(@PathParam("id") SiteId id) {
        Site site = readCustomer.site(id);
        return site(site.customer(), viewer.form(site));
    }

    @POST
    @Path("{customer}/sites")
    public Response saveSite(@PathParam("customer") CustomerId customer, Form<Site> form) {
        return form.run(site -> saveSite.save(site, viewer.id()))
                ? Respond.to("/customers/" + customer, "customers.saved")
                : Respond.again(form.fields(), site(customer, form));
    }

    private SiteForm site(CustomerId customer, Form<Site> form) {
        return new SiteForm(customer, readCustomer.customer(customer).name(), form.labeled("customers"));
    }
}
