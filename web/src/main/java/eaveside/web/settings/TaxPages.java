package eaveside.web.settings;

import eaveside.catalog.SetTax;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.ledger.Books;
import eaveside.web.View;
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

/** The owner's dated tax settings. */
@Path("/settings/taxes")
@Dependent
@RolesAllowed(Roles.OWNER)
public class TaxPages extends FormResource<TaxSetting> {
    @Inject
    TaxSettings taxSettings;

    @Inject
    SetTax setTax;

    @Inject
    Books books;

    public TaxPages() {
        super(TaxSetting.class, "settings.taxes", "/settings/taxes");
    }

    @Override
    protected Listing<TaxSetting> list() {
        View view = viewer.view();
        List<TaxSetting> all = taxSettings.all();
        return rows(() -> all)
                .within("settings.title", "/settings")
                .about("confirm")
                .searchedBy("code", "exemptionReason")
                .columns("code", "category", "rate", "from")
                .column("status", tax -> view.t("settings.validity", validity(tax, all)))
                .columns("exemptionReason");
    }

    private Validity validity(TaxSetting tax, List<TaxSetting> all) {
        List<LocalDate> days = all.stream()
                .filter(other -> other.code().equals(tax.code()))
                .map(TaxSetting::from)
                .toList();
        return Validity.of(days, tax.from(), books.today());
    }

    @Override
    protected Map<String, String> first() {
        return Map.of("from", books.today().toString(), "category", TaxCategory.S.name());
    }

    @Override
    protected void save(TaxSetting tax) {
        setTax.set(tax, viewer.id());
    }
}
