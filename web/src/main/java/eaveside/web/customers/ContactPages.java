package eaveside.web.customers;

import eaveside.customers.Contact;
import eaveside.customers.ReadCustomer;
import eaveside.customers.SaveContact;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
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

/** The form of a contact. */
@Path("/customers/{customer}/contacts")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ContactPages {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    SaveContact saveContact;

    @Inject
    Viewer viewer;

    public record ContactForm(CustomerId customer, String customerName, Form<Contact> form) implements Page {
        @Override
        public String template() {
            return "customers/contact-form.jte";
        }
    }

    @GET
    @Path("new")
    @Transactional
    public ContactForm fresh(@PathParam("customer") CustomerId customer) {
        return page(customer, viewer.fresh(Contact.class));
    }

    @GET
    @Path("{id}")
    @Transactional
    public ContactForm edit(@PathParam("customer") CustomerId customer, @PathParam("id") ContactId id) {
        return page(customer, viewer.form(readCustomer.contact(customer, id)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("customer") CustomerId customer, Form<Contact> form) {
        return form.run(contact -> saveContact.save(contact, viewer.id()))
                ? Respond.to("/customers/" + customer, "customers.saved")
                : Respond.again(form.fields(), page(customer, form));
    }

    private ContactForm page(CustomerId customer, Form<Contact> form) {
        return new ContactForm(customer, readCustomer.customer(customer).name(), form.labeled("customers"));
    }
}
