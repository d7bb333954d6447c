package eaveside.web.customers;

import eaveside.customers.Address;
import eaveside.customers.ReadCustomer;
import eaveside.customers.SaveSite;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
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
import java.util.Map;

/** The form of a site. */
@Path("/customers/{customer}/sites")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class SitePages {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    SaveSite saveSite;

    @Inject
    Viewer viewer;

    public record SiteForm(CustomerId customer, String customerName, Form<Site> form) implements Page {
        @Override
        public String template() {
            return "customers/site-form.jte";
        }
    }

    /** Most sites lie where their invoices go. */
    @GET
    @Path("new")
    @Transactional
    public SiteForm fresh(@PathParam("customer") CustomerId customer) {
        Address address = readCustomer.customer(customer).address();
        return page(
                customer,
                viewer.fresh(
                        Site.class,
                        Map.of(
                                "street", address.street(),
                                "city", address.city(),
                                "region", address.region(),
                                "zipCode", address.zipCode(),
                                "country", address.country())));
    }

    @GET
    @Path("{id}")
    @Transactional
    public SiteForm edit(@PathParam("id") SiteId id) {
        Site site = readCustomer.site(id);
        return page(site.customer(), viewer.form(site));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("customer") CustomerId customer, Form<Site> form) {
        return form.run(site -> saveSite.save(site, viewer.id()))
                ? Respond.to("/customers/" + customer, "customers.saved")
                : Respond.again(form.fields(), page(customer, form));
    }

    private SiteForm page(CustomerId customer, Form<Site> form) {
        return new SiteForm(customer, readCustomer.customer(customer).name(), form.labeled("customers"));
    }
}
