package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.catalog.TaxCode;
import eaveside.customers.SurfaceType;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.web.Json;
import eaveside.web.Json.Measured;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
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
@Path("/api/services")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "ServiceItems")
public class ServiceItemsApi {
    private final Catalog catalog;
    private final SaveServiceItem saveServiceItem;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public ServiceItemsApi(Catalog catalog, SaveServiceItem saveServiceItem, Viewer viewer, AuditLog auditLog) {
        this.catalog = catalog;
        this.saveServiceItem = saveServiceItem;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** What one unit uses up, in any unit like the item's own. */
    public record Use(@Nullable String item, @Nullable Measured perUnit) {}

    /**
     * A service.
     *
     * @param  unit           UN/ECE Recommendation 20
     * @param  minutesPerUnit standard labor minutes
     * @param  surfaceType    ARRAY, SKYLIGHT, WINDOW or ROOF; absent where it is done on no surface
     * @param  active         true where absent
     * @param  version        as read; absent for a new one
     */
    public record Body(
            @Nullable String id,
            @Nullable String serviceLine,
            @Nullable String code,
            @Nullable String name,
            @Nullable String unit,
            @Nullable String minutesPerUnit,
            @Nullable String taxCode,
            @Nullable String surfaceType,
            @Nullable String cautions,
            @Nullable List<Use> consumables,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Body of(ServiceItem o) {
            SurfaceType type = o.surfaceType();
            return new Body(
                    o.id().toString(),
                    o.serviceLine().toString(),
                    o.code(),
                    o.name(),
                    o.unit().code(),
                    o.minutesPerUnit().value().toPlainString(),
                    o.taxCode().value(),
                    type == null ? null : type.name(),
                    o.cautions(),
                    o.consumables().stream()
                            .map(c -> new Use(c.item().toString(), Measured.of(c.perUnit())))
                            .toList(),
                    o.active(),
                    o.version());
        }

        ServiceItem read(ServiceItemId serviceItem) {
            return new ServiceItem(
                    serviceItem,
                    ServiceLineId.of(Json.required("serviceLine", serviceLine)),
                    Json.required("code", code),
                    Json.required("name", name),
                    Unit.ofCode(Json.required("unit", unit)),
                    new StandardMinutes(Json.number("minutesPerUnit", minutesPerUnit)),
                    new TaxCode(Json.required("taxCode", taxCode)),
                    surfaceType == null ? null : Json.choice("surfaceType", SurfaceType.class, surfaceType),
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
    @Operation(summary = "All services by code, those no longer sold too")
    public List<Body> serviceItems() {
        return catalog.serviceItems().stream().map(Body::of).toList();
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "A service")
    public Body serviceItem(@PathParam("id") String id) {
        return Body.of(catalog.serviceItem(ServiceItemId.of(id)));
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Adds a service, or changes the version named; the same again changes nothing")
    public Body save(@PathParam("id") String id, @Nullable Body body) {
        ServiceItemId serviceItem = ServiceItemId.of(id);
        ServiceItem saved = saveServiceItem.save(Json.required("body", body).read(serviceItem), viewer.id());
        auditLog.done("serviceItem.save", saved.code());
        return Body.of(saved);
    }
}
