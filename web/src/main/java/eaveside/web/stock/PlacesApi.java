package eaveside.web.stock;

import eaveside.access.Role;
import eaveside.inventory.PlaceKind;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SavePlace;
import eaveside.kernel.PlaceId;
import eaveside.kernel.UserId;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
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
public class PlacesApi {
    private final ReadStock readStock;
    private final SavePlace savePlace;
    private final Trail trail;

    @Inject
    public PlacesApi(ReadStock readStock, SavePlace savePlace, Trail trail) {
        this.readStock = readStock;
        this.savePlace = savePlace;
        this.trail = trail;
    }

    /**
     * A store room or van.
     *
     * @param kind        STORE or VAN
     * @param technicians the ids of those who drive with the van, none where absent; each has at most one
     * @param active      true where absent
     * @param version     as read; absent for a new one
     */
    public record Place(
            @Nullable String id,
            @Nullable String name,
            @Nullable String kind,
            @Nullable List<String> technicians,
            @Nullable Boolean active,
            @Nullable Integer version) {
        static Place of(eaveside.inventory.Place place) {
            return new Place(
                    place.id().toString(),
                    place.name(),
                    place.kind().name(),
                    place.technicians().stream().map(UserId::toString).toList(),
                    place.active(),
                    place.version());
        }

        eaveside.inventory.Place read(PlaceId place) {
            return new eaveside.inventory.Place(
                    place,
                    Json.required("name", name),
                    Json.choice("kind", PlaceKind.class, kind),
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
    @Path("places")
    @Transactional
    @Operation(summary = "Store rooms and vans, those no longer in use too")
    public List<Place> places() {
        return readStock.places().stream().map(Place::of).toList();
    }

    @PUT
    @Path("places/{id}")
    @Operation(summary = "Adds a store room or van, or changes the version named; the same again changes nothing")
    public Place save(@PathParam("id") String id, @Nullable Place body) {
        eaveside.inventory.Place saved =
                savePlace.save(Json.required("body", body).read(PlaceId.of(id)));
        trail.done("place.save", saved.name());
        return Place.of(saved);
    }
}
