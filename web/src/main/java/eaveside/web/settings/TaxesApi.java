package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.catalog.SetTax;
import eaveside.catalog.TaxCategory;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.kernel.Percent;
import eaveside.web.Json;
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
import java.math.BigDecimal;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The owner's dated tax settings for scripts; each is to be confirmed with the local tax authority. */
@Path("/api/settings/taxes")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For(Role.OWNER)
@Tag(name = "Settings")
public class TaxesApi {
    private final TaxSettings taxSettings;
    private final SetTax setTax;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public TaxesApi(TaxSettings taxSettings, SetTax setTax, Viewer viewer, AuditLog auditLog) {
        this.taxSettings = taxSettings;
        this.setTax = setTax;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /**
     * How a tax code is taxed from a day on.
     *
     * @param  category        by its code in UNCL 5305
     * @param  rate            per cent, as text; absent or zero in every category but S
     * @param  from            the first day that it applies on
     * @param  exemptionReason what the invoice says where no tax is charged; absent in categories S and Z
     */
    public record Tax(
            @Nullable String taxCode,
            @Nullable String category,
            @Nullable String rate,
            @Nullable String from,
            @Nullable String exemptionReason) {
        static Tax of(TaxSetting setting) {
            return new Tax(
                    setting.code().value(),
                    setting.category().name(),
                    setting.rate().value().toPlainString(),
                    setting.from().toString(),
                    setting.exemptionReason());
        }

        TaxSetting read() {
            return new TaxSetting(
                    new TaxCode(Json.required("taxCode", taxCode)),
                    Json.choice("category", TaxCategory.class, category),
                    Percent.of(rate == null ? BigDecimal.ZERO : Json.number("rate", rate)),
                    Json.date("from", from),
                    Json.optional(exemptionReason));
        }
    }

    @GET
    @Transactional
    @Operation(summary = "All tax settings that are, were or will be in force: by code, the newest day first")
    public List<Tax> taxes() {
        return taxSettings.all().stream().map(Tax::of).toList();
    }

    @POST
    @Operation(summary = "Sets how a tax code is taxed from a day on; the same again is a retry")
    public Tax set(@Nullable Tax body) {
        TaxSetting setting = Json.required("body", body).read();
        setTax.set(setting, viewer.id());
        auditLog.done("tax.set", setting.code());
        return Tax.of(setting);
    }
}
