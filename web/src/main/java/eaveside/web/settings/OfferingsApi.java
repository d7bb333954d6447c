package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.customers.SurfaceKind;
import eaveside.kernel.OfferingId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.offerings.SaveOffering;
import eaveside.offerings.StandardConsumable;
import eaveside.offerings.StandardMinutes;
import eaveside.offerings.TaxCode;
import eaveside.web.Json;
import eaveside.web.Json.Measured;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What the company sells, for scripts. */
@Path("/api/offerings")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Offerings")
public class OfferingsApi {
    private final Catalogue catalogue;
    private final SaveOffering saveOffering;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public OfferingsApi(Catalogue catalogue, SaveOffering saveOffering, Viewer viewer, Trail trail) {
        this.catalogue = catalogue;
        this.saveOffering = saveOffering;
        this.viewer = viewer;
        this.trail = trail;
    }

    /** What one unit uses up, in any unit like the item's own. */
    public record Use(@Nullable String item, @Nullable Measured perUnit) {}

    /**
     * An offering.
     *
     * @param unit           UN/ECE Recommendation 20
     * @param minutesPerUnit standard person-minutes
     * @param surfaceKind    ARRAY, SKYLIGHT, WINDOW or ROOF; absent where it is done on no surface
     * @param active         true where absent
     * @param version        as read; absent for a new one
     */
    public record Body(
            @Nullable String id,
            @Nullable String serviceLine,
            @Nullable String code,
            @Nullable String name,
            @Nullable String unit,
            @Nullable String minutesPerUnit,
            @Nullable String taxCode,
            @Nullable String surfaceKind,
            @Nullable String cautions,
            @Nullable List<Use> consumables,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Body of(Offering o) {
            SurfaceKind kind = o.surfaceKind();
            return new Body(
                    o.id().toString(),
                    o.serviceLine().toString(),
                    o.code(),
                    o.name(),
                    o.unit().code(),
                    o.minutesPerUnit().value().toPlainString(),
                    o.taxCode().value(),
                    kind == null ? null : kind.name(),
                    o.cautions(),
                    o.consumables().stream()
                            .map(c -> new Use(c.item().toString(), Measured.of(c.perUnit())))
                            .toList(),
                    o.active(),
                    o.version());
        }

        Offering read(OfferingId offering) {
            return new Offering(
                    offering,
                    ServiceLineId.of(Json.required("serviceLine", serviceLine)),
                    Json.required("code", code),
                    Json.required("name", name),
                    Unit.ofCode(Json.required("unit", unit)),
                    new StandardMinutes(Json.number("minutesPerUnit", minutesPerUnit)),
                    new TaxCode(Json.required("taxCode", taxCode)),
                    surfaceKind == null ? null : Json.choice("surfaceKind", SurfaceKind.class, surfaceKind),
                    cautions == null ? "" : cautions,
                    consumables == null
                            ? List.of()
                            : consumables.stream()
                                    .map(use -> new StandardConsumable(
                                            StockItemId.of(Json.required("item", use.item())),
                                            Json.quantity("perUnit", use.perUnit())))
                                    .toList(),
                    active == null || active,
                    version == null ? 0 : version);
        }
    }

    @GET
    @Transactional
    @Operation(summary = "All offerings by code, those no longer sold too")
    public List<Body> offerings() {
        return catalogue.offerings().stream().map(Body::of).toList();
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "An offering")
    public Body offering(@PathParam("id") String id) {
        return Body.of(catalogue.offering(OfferingId.of(id)));
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Adds an offering, or changes the version named; the same again changes nothing")
    public Body save(@PathParam("id") String id, @Nullable Body body) {
        OfferingId offering = OfferingId.of(id);
        Offering saved = saveOffering.save(Json.required("body", body).read(offering), viewer.id());
        trail.done("offering.save", saved.code());
        return Body.of(saved);
    }
}
