package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.catalog.SetTax;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.kernel.Percent;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.math.BigDecimal;
import java.net.URI;
import java.time.LocalDate;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** The owner's dated tax settings. */
@Path("/settings/taxes")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For(Role.OWNER)
public class TaxResource {
    private final TaxSettings taxSettings;
    private final SetTax setTax;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public TaxResource(TaxSettings taxSettings, SetTax setTax, Books books, Viewer viewer, AuditLog auditLog) {
        this.taxSettings = taxSettings;
        this.setTax = setTax;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    public record TaxPage(List<Dated> settings, Map<String, String> categories, Fields fields) implements Page {
        @Override
        public String template() {
            return "settings/taxes.jte";
        }
    }

    /** A setting, and whether it is what holds today. */
    public record Dated(TaxSetting setting, When when) {}

    /** Where a dated setting stands today. */
    public enum When {
        COMING,
        IN_FORCE,
        PAST
    }

    @GET
    @Transactional
    public TaxPage taxes() {
        return page(Fields.showing(Map.of("from", books.today().toString(), "category", TaxCategory.S.name())));
    }

    private TaxPage page(Fields fields) {
        Map<String, String> categories = new LinkedHashMap<>();
        for (TaxCategory category : TaxCategory.values()) {
            categories.put(category.name(), category + " · " + viewer.view().t("settings.tax.category", category));
        }
        LocalDate today = books.today();
        Map<TaxCode, TaxSetting> inForce = new LinkedHashMap<>();
        List<TaxSetting> all = taxSettings.all();
        all.stream().filter(s -> !s.from().isAfter(today)).forEach(s -> inForce.putIfAbsent(s.code(), s));
        return new TaxPage(
                all.stream()
                        .map(s -> new Dated(
                                s,
                                s.from().isAfter(today)
                                        ? When.COMING
                                        : s.equals(inForce.get(s.code())) ? When.IN_FORCE : When.PAST))
                        .toList(),
                categories,
                fields);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response set(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        String code = fields.text("taxCode");
        TaxCategory category = fields.choice("category", TaxCategory.class);
        BigDecimal rate = fields.optional("rate").isEmpty() ? BigDecimal.ZERO : fields.decimal("rate");
        LocalDate from = fields.date("from", books.today());
        boolean set = fields.run(() -> setTax.set(
                new TaxSetting(
                        new TaxCode(code),
                        category == null ? TaxCategory.S : category,
                        Percent.of(rate),
                        from,
                        fields.optional("exemptionReason")),
                viewer.id()));
        if (!set) {
            return Response.status(fields.status()).entity(page(fields)).build();
        }
        auditLog.done("tax.set", code);
        return Response.seeOther(URI.create("/settings/taxes?done=settings.saved"))
                .build();
    }
}
