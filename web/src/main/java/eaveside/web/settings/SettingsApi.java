package eaveside.web.settings;

import eaveside.catalog.SetTax;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.costing.CostRates;
import eaveside.costing.ReadCostRates;
import eaveside.costing.SetCostRates;
import eaveside.customers.PanelManufacturer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.SavePanelManufacturer;
import eaveside.kernel.KernelRefusal;
import eaveside.ledger.Company;
import eaveside.ledger.UpdateCompany;
import eaveside.web.forms.Created;
import eaveside.web.forms.JsonReading;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.json.Json;
import jakarta.json.JsonObject;
import jakarta.json.JsonObjectBuilder;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/**
 * What the owner sets, for scripts: the company, what an hour and a distance cost it, and taxes, each to be confirmed with the
 * local tax authority. The office too keeps what manufacturers of solar panels allow when their panels are washed.
 */
@Path("/api/settings")
@Dependent
@RolesAllowed(Roles.OWNER)
@Tag(name = "Settings")
public class SettingsApi extends JsonResource {
    @Inject
    UpdateCompany updateCompany;

    @Inject
    ReadPanelManufacturers readPanelManufacturers;

    @Inject
    SavePanelManufacturer savePanelManufacturer;

    @Inject
    ReadCostRates readCostRates;

    @Inject
    SetCostRates setCostRates;

    @Inject
    TaxSettings taxSettings;

    @Inject
    SetTax setTax;

    /** All of them. */
    public record Manufacturers(List<PanelManufacturer> manufacturers) {}

    /** All rates that are, were or will be in force. */
    public record Rates(List<CostRates> rates) {}

    /** Every setting that is, was or will be in force. */
    public record Taxes(List<TaxSetting> taxes) {}

    @GET
    @Path("company")
    @Operation(summary = "The company with the version that a change must name")
    public Company company() {
        return updateCompany.current();
    }

    @PUT
    @Path("company")
    @Operation(
            summary = "Changes the company; what is stored already is a retry",
            description = "Currency and first month never change, and need not be sent.")
    @RequestBody(
            content =
                    @Content(
                            schema =
                                    @Schema(
                                            implementation = Company.class,
                                            requiredProperties = {"name", "address", "zone", "measures"})))
    public Company saveCompany(JsonObject body) {
        Company now = updateCompany.current();
        JsonObjectBuilder whole = Json.createObjectBuilder()
                .add("currency", now.currency())
                .add("booksFrom", now.booksFrom().toString());
        body.forEach(whole::add);
        return updateCompany.update(JsonReading.read(Company.class, whole.build(), Map.of()), viewer.id());
    }

    @GET
    @Path("manufacturers")
    @RolesAllowed({Roles.OWNER, Roles.OFFICE})
    @Operation(summary = "Panel manufacturers by name; a limit that the manual does not give is absent")
    public Manufacturers manufacturers() {
        return new Manufacturers(readPanelManufacturers.all());
    }

    /** The name is in the body: it may hold what an address cannot, such as a slash. */
    @PUT
    @Path("manufacturers")
    @RolesAllowed({Roles.OWNER, Roles.OFFICE})
    @Operation(summary = "Adds the manufacturer named, or changes the version named; the same again changes nothing")
    public PanelManufacturer saveManufacturer(PanelManufacturer manufacturer) {
        return savePanelManufacturer.save(manufacturer, viewer.id());
    }

    @GET
    @Path("rates")
    @Operation(summary = "All rates that are, were or will be in force, the newest day first")
    public Rates rates() {
        return new Rates(readCostRates.all());
    }

    @GET
    @Path("rates/{date}")
    @Operation(summary = "The rates that are in force on a day")
    public CostRates rates(@PathParam("date") LocalDate day) {
        return readCostRates.all().stream()
                .filter(rates -> !rates.from().isAfter(day))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("cost rates", "on " + day));
    }

    @POST
    @Path("rates")
    @Operation(summary = "Sets what labor, travel and overhead cost from a day on; the same again is a retry")
    public Created<CostRates> setRates(CostRates rates) {
        setCostRates.set(rates, viewer.id());
        return Created.at("/api/settings/rates/" + rates.from(), rates);
    }

    @GET
    @Path("taxes")
    @Operation(summary = "All tax settings that are, were or will be in force: by code, the newest day first")
    public Taxes taxes() {
        return new Taxes(taxSettings.all());
    }

    @GET
    @Path("taxes/{code}/{date}")
    @Operation(summary = "How a tax code is taxed on a day")
    public TaxSetting tax(@PathParam("code") String code, @PathParam("date") LocalDate day) {
        return taxSettings.all().stream()
                .filter(tax -> tax.code().value().equals(code) && !tax.from().isAfter(day))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("tax setting", code + " on " + day));
    }

    @POST
    @Path("taxes")
    @Operation(summary = "Sets how a tax code is taxed from a day on; the same again is a retry")
    public Created<TaxSetting> setTax(TaxSetting tax) {
        setTax.set(tax, viewer.id());
        return Created.at("/api/settings/taxes/" + tax.code() + "/" + tax.from(), tax);
    }
}
