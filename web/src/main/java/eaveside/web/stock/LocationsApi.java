package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.LocationType;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveLocation;
import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import eaveside.web.Json;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
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

/** Store rooms and vans, for scripts. */
@Path("/api/stock")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Stock")
public class LocationsApi {
    private final ReadStock readStock;
    private final SaveLocation saveLocation;
    private final AuditLog auditLog;

    @Inject
    public LocationsApi(ReadStock readStock, SaveLocation saveLocation, AuditLog auditLog) {
        this.readStock = readStock;
        this.saveLocation = saveLocation;
        this.auditLog = auditLog;
    }

    /**
     * A store room or van.
     *
     * @param  type        STORE or VAN
     * @param  technicians the ids of those who drive with the van, none where absent; each has at most one
     * @param  active      true where absent
     * @param  version     as read; absent for a new one
     */
    public record Location(
            @Nullable String id,
            @Nullable String name,
            @Nullable String type,
            @Nullable List<String> technicians,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Location of(eaveside.inventory.Location location) {
            return new Location(
                    location.id().toString(),
                    location.name(),
                    location.type().name(),
                    location.technicians().stream().map(UserId::toString).toList(),
                    location.active(),
                    location.version());
        }

        eaveside.inventory.Location read(LocationId location) {
            return new eaveside.inventory.Location(
                    location,
                    Json.required("name", name),
                    Json.choice("type", LocationType.class, type),
                    technicians == null
                            ? List.of()
                            : technicians.stream()
                                    .map(id -> UserId.of(Json.required("technicians", id)))
                                    .toList(),
                    active == null || active,
                    version);
        }
    }

    @GET
    @Path("locations")
    @Transactional
    @Operation(summary = "Store rooms and vans, those no longer in use too")
    public List<Location> locations() {
        return readStock.locations().stream().map(Location::of).toList();
    }

    @PUT
    @Path("locations/{id}")
    @Operation(summary = "Adds a store room or van, or changes the version named; the same again changes nothing")
    public Location save(@PathParam("id") String id, @Nullable Location body) {
        eaveside.inventory.Location saved =
                saveLocation.save(Json.required("body", body).read(LocationId.of(id)));
        auditLog.done("location.save", saved.name());
        return Location.of(saved);
    }
}
