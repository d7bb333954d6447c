package eaveside.web.settings;

import eaveside.costing.CostRates;
import eaveside.costing.ReadCostRates;
import eaveside.costing.SetCostRates;
import eaveside.kernel.Unit;
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
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What an hour and a mile cost the company, from which day on. */
@Path("/settings/rates")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed(Roles.OWNER)
public class RatePages extends ListResource<CostRates> {
    @Inject
    ReadCostRates readCostRates;

    @Inject
    SetCostRates setCostRates;

    @Inject
    Books books;

    @Override
    protected Listing<CostRates> list() {
        View view = viewer.view();
        List<CostRates> all = readCostRates.all();
        List<LocalDate> days = all.stream().map(CostRates::from).toList();
        return Listing.whole("settings.rates", "/settings/rates", query -> all)
                .within("settings.title", "/settings")
                .columns("from", "laborPerHour")
                .column(
                        "travelPerDistance",
                        rates -> view.t(
                                "common.price.per",
                                view.price(rates.travelPerDistance()),
                                view.unit(rates.travelPerDistance().base().unit())))
                .columns("overheadPerHour")
                .column("status", rates -> view.t("settings.standing", Standing.of(days, rates.from(), view.today())))
                .action("new", "/settings/rates/new");
    }

    @GET
    @Path("new")
    @Transactional
    public EditPage fresh() {
        return page(viewer.form(CostRates.class, Map.of("from", books.today().toString())));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response set(Form<CostRates> form) {
        return page(form).saved(form.run(rates -> setCostRates.set(rates, viewer.id())));
    }

    private EditPage page(Form<CostRates> form) {
        return EditPage.of(
                form.in(viewer.view().us() ? Unit.MILE : Unit.KILOMETER), "settings.rates", "/settings/rates");
    }
}
