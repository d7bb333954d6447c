package eaveside.web.settings;

import eaveside.catalog.SetTax;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.ledger.Books;
import eaveside.web.View;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
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
import java.util.List;
import java.util.Map;

/** The owner's dated tax settings. */
@Path("/settings/taxes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class TaxPages extends ListResource<TaxSetting> {
    @Inject
    TaxSettings taxSettings;

    @Inject
    SetTax setTax;

    @Inject
    Books books;

    @Override
    protected Listing<TaxSetting> list() {
        View view = viewer.view();
        List<TaxSetting> all = taxSettings.all();
        return Listing.whole(
                        "settings.taxes",
                        "/settings/taxes",
                        query -> all.stream()
                                .filter(tax -> query.finds(tax.code().value(), tax.exemptionReason()))
                                .toList())
                .within("settings.title", "/settings")
                .about("confirm")
                .searched()
                .columns("code", "category", "rate", "from")
                .column("status", tax -> view.t("settings.standing", standing(tax, all)))
                .columns("exemptionReason")
                .action("new", "/settings/taxes/new");
    }

    private Standing standing(TaxSetting tax, List<TaxSetting> all) {
        return Standing.of(
                all.stream()
                        .filter(other -> other.code().equals(tax.code()))
                        .map(TaxSetting::from)
                        .toList(),
                tax.from(),
                books.today());
    }

    @GET
    @Path("new")
    @Transactional
    public EditPage fresh() {
        return page(viewer.form(
                TaxSetting.class, Map.of("from", books.today().toString(), "category", TaxCategory.S.name())));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response set(Form<TaxSetting> form) {
        return page(form).saved(form.run(tax -> setTax.set(tax, viewer.id())));
    }

    private static EditPage page(Form<TaxSetting> form) {
        return EditPage.of(form, "settings.taxes", "/settings/taxes");
    }
}
