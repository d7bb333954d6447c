package eaveside.web.settings;

import eaveside.ledger.Company;
import eaveside.ledger.UpdateCompany;
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
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;

/** The company's name, address and measures. */
@Path("/settings/company")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class CompanyPages {
    @Inject
    UpdateCompany updateCompany;

    @Inject
    Viewer viewer;

    /** @param  now the company as it stands, for what cannot be changed */
    public record CompanyForm(Company now, Form<Company> form) implements Page {
        @Override
        public String template() {
            return "settings/company.jte";
        }
    }

    @GET
    @Transactional
    public CompanyForm company() {
        Company now = updateCompany.current();
        return page(now, viewer.form(now));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<Company> form) {
        Company now = updateCompany.current();
        form.labeled("settings.company").given("currency", now.currency()).given("booksFrom", now.booksFrom());
        return form.run(company -> updateCompany.update(company, viewer.id()))
                ? Respond.to("/settings/company", "settings.company.saved")
                : Respond.again(form.fields(), page(now, form));
    }

    private static CompanyForm page(Company now, Form<Company> form) {
        return new CompanyForm(now, form.labeled("settings.company"));
    }
}
