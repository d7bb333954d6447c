package eaveside.web.settings;

import eaveside.costing.CostRates;
import eaveside.costing.ReadCostRates;
import eaveside.costing.SetCostRates;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.web.View;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Form;
import eaveside.web.forms.FormResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** What an hour and a mile cost the company, from which day on. */
@Path("/settings/rates")
@Dependent
@RolesAllowed(Roles.OWNER)
public class RatePages extends FormResource<CostRates> {
    @Inject
    ReadCostRates readCostRates;

    @Inject
    SetCostRates setCostRates;

    @Inject
    Books books;

    public RatePages() {
        super(CostRates.class, "settings.rates", "/settings/rates");
    }

    @Override
    protected Listing<CostRates> list() {
        View view = viewer.view();
        List<CostRates> all = readCostRates.all();
        List<LocalDate> days = all.stream().map(CostRates::from).toList();
        return rows(() -> all)
                .within("settings.title", "/settings")
                .columns("from", "laborPerHour")
                .column(
                        "travelPerDistance",
                        rates -> view.t(
                                "common.price.per",
                                view.price(rates.travelPerDistance()),
                                view.unit(rates.travelPerDistance().base().unit())))
                .columns("overheadPerHour")
                .column("status", rates -> view.t("settings.validity", Validity.of(days, rates.from(), view.today())));
    }

    @Override
    protected Map<String, String> first() {
        return Map.of("from", books.today().toString());
    }

    @Override
    protected void save(CostRates rates) {
        setCostRates.set(rates, viewer.id());
    }

    @Override
    protected EditPage page(Form<CostRates> form) {
        return super.page(form.in(viewer.view().unitOf(Unit.KILOMETER)));
    }
}
