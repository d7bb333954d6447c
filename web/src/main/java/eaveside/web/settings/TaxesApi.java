package eaveside.web.settings;

import eaveside.catalog.SetTax;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.kernel.KernelRefusal;
import eaveside.web.forms.Created;
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
import java.time.LocalDate;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** The owner's dated tax settings for scripts; each is to be confirmed with the local tax authority. */
@Path("/api/settings/taxes")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Roles.OWNER)
@Tag(name = "Settings")
public class TaxesApi {
    @Inject
    TaxSettings taxSettings;

    @Inject
    SetTax setTax;

    @Inject
    Viewer viewer;

    /** Every setting that is, was or will be in force. */
    public record Taxes(List<TaxSetting> taxes) {}

    @GET
    @Transactional
    @Operation(summary = "All tax settings that are, were or will be in force: by code, the newest day first")
    public Taxes taxes() {
        return new Taxes(taxSettings.all());
    }

    @GET
    @Path("{code}/{date}")
    @Transactional
    @Operation(summary = "How a tax code is taxed on a day")
    public TaxSetting tax(@PathParam("code") String code, @PathParam("date") LocalDate day) {
        return taxSettings.all().stream()
                .filter(tax -> tax.code().value().equals(code) && !tax.from().isAfter(day))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("tax setting", code + " on " + day));
    }

    @POST
    @Operation(summary = "Sets how a tax code is taxed from a day on; the same again is a retry")
    public Created<TaxSetting> set(TaxSetting tax) {
        setTax.set(tax, viewer.id());
        return Created.at("/api/settings/taxes/" + tax.code() + "/" + tax.from(), tax);
    }
}
