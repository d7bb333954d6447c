package eaveside.web.settings;

import eaveside.ledger.Company;
import eaveside.ledger.UpdateCompany;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.core.Response;

/** The way to every setting, of which the office sees what it may change; and the company's name, address and measures. */
@Path("/settings")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class SettingsPages extends PageResource {
    @Inject
    UpdateCompany updateCompany;

    public record SettingsPage() implements Page {}

    /** @param  now the company as it is, for what cannot be changed */
    public record CompanyPage(Company now, Form<Company> form) implements Page {}

    @GET
    public SettingsPage settings() {
        return new SettingsPage();
    }

    @GET
    @Path("company")
    @RolesAllowed(Roles.OWNER)
    @Transactional
    public CompanyPage company() {
        Company now = updateCompany.current();
        return page(now, viewer.form(now));
    }

    @POST
    @Path("company")
    @RolesAllowed(Roles.OWNER)
    public Response save(Form<Company> form) {
        Company now = updateCompany.current();
        CompanyPage page = page(now, form.given("currency", now.currency()).given("booksFrom", now.booksFrom()));
        return form.run(company -> updateCompany.update(company, viewer.id()))
                ? Respond.to("/settings/company", "settings.company.saved")
                : Respond.again(form.fields(), page);
    }

    private static CompanyPage page(Company now, Form<Company> form) {
        return new CompanyPage(now, form.labeled("settings.company"));
    }
}
