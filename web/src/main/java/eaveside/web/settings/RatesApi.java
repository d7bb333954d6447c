package eaveside.web.settings;

import eaveside.costing.CostRates;
import eaveside.costing.ReadCostRates;
import eaveside.costing.SetCostRates;
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

/** What an hour and a distance cost the company, from which day on, for scripts; the owner's alone. */
@Path("/api/settings/rates")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@RolesAllowed(Roles.OWNER)
@Tag(name = "Settings")
public class RatesApi {
    @Inject
    ReadCostRates readCostRates;

    @Inject
    SetCostRates setCostRates;

    @Inject
    Viewer viewer;

    /** All rates that are, were or will be in force. */
    public record Rates(List<CostRates> rates) {}

    @GET
    @Transactional
    @Operation(summary = "All rates that are, were or will be in force, the newest day first")
    public Rates rates() {
        return new Rates(readCostRates.all());
    }

    @GET
    @Path("{date}")
    @Transactional
    @Operation(summary = "The rates that are in force on a day")
    public CostRates rates(@PathParam("date") LocalDate day) {
        return readCostRates.all().stream()
                .filter(rates -> !rates.from().isAfter(day))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("cost rates", "on " + day));
    }

    @POST
    @Operation(summary = "Sets what labor, travel and overhead cost from a day on; the same again is a retry")
    public Created<CostRates> set(CostRates rates) {
        setCostRates.set(rates, viewer.id());
        return Created.at("/api/settings/rates/" + rates.from(), rates);
    }
}
