package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.Contact;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ReadCustomer;
import eaveside.customers.SaveContact;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
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

/** The form of somebody to talk to at a customer's. */
@Path("/customers/{customer}/contacts")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class ContactResource {
    private final ReadCustomer readCustomer;
    private final SaveContact saveContact;
    private final Viewer viewer;

    @Inject
    public ContactResource(ReadCustomer readCustomer, SaveContact saveContact, Viewer viewer) {
        this.readCustomer = readCustomer;
        this.saveContact = saveContact;
        this.viewer = viewer;
    }

    public record ContactFormPage(CustomerId customer, String customerName, Fields fields, boolean isNew)
            implements Page {
        @Override
        public String template() {
            return "customers/contact-form.jte";
        }

        public Map<String, String> labels(View view) {
            return Labels.of(view, List.of("name", "role", "phone", "email", "active"));
        }
    }

    @GET
    @Path("new")
    @Transactional
    public ContactFormPage fresh(@PathParam("customer") String customer) {
        return page(
                CustomerId.of(customer),
                Fields.showing(Map.of("id", ContactId.next().toString(), "version", "0", "active", "yes")),
                true);
    }

    @GET
    @Path("{id}")
    @Transactional
    public ContactFormPage edit(@PathParam("customer") String customer, @PathParam("id") String id) {
        CustomerId owner = CustomerId.of(customer);
        ContactId asked = ContactId.of(id);
        Contact contact = readCustomer.contacts(owner).stream()
                .filter(c -> c.id().equals(asked))
                .findFirst()
                .orElseThrow(() -> new CustomersRefusal.NoSuchContact(id));
        Map<String, String> values = values(contact);
        values.put("id", id);
        values.put("version", String.valueOf(contact.version()));
        return page(owner, Fields.showing(values), false);
    }

    private ContactFormPage page(CustomerId customer, Fields fields, boolean isNew) {
        return new ContactFormPage(customer, readCustomer.customer(customer).name(), fields, isNew);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("customer") String customer, MultivaluedMap<String, String> form) {
        CustomerId owner = CustomerId.of(customer);
        Fields fields = Fields.of(form);
        ContactId id = new ContactId(fields.id("id"));
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String name = fields.text("name");
        boolean saved = fields.run(
                () -> saveContact.save(
                        new Contact(
                                id,
                                owner,
                                name,
                                fields.optional("role"),
                                fields.optional("email"),
                                fields.optional("phone"),
                                fields.ticked("active"),
                                version),
                        viewer.id()),
                refusal -> refusal instanceof CustomersRefusal.EditedMeanwhile other
                                && other.theirs() instanceof Contact theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), values(theirs)))
                        : Optional.empty());
        return saved
                ? Response.seeOther(URI.create("/customers/" + owner + "?done=customers.saved"))
                        .build()
                : Response.status(fields.status())
                        .entity(page(owner, fields, version == 0))
                        .build();
    }

    private static Map<String, String> values(Contact contact) {
        Map<String, String> values = new HashMap<>();
        values.put("name", contact.name());
        values.put("role", contact.role());
        values.put("phone", contact.phone());
        values.put("email", contact.email());
        values.put("active", contact.active() ? "yes" : "");
        return values;
    }
}
