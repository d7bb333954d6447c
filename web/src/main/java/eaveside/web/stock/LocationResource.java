package eaveside.web.stock;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Location;
import eaveside.inventory.LocationType;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveLocation;
import eaveside.kernel.LocationId;
import eaveside.kernel.Refusal;
import eaveside.kernel.UserId;
import eaveside.web.Page;
import eaveside.web.View;
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
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;

/** Where goods are: store rooms, and vans with the technicians who drive them. */
@Path("/stock/locations")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class LocationResource {
    private final ReadStock readStock;
    private final SaveLocation saveLocation;
    private final ReadUsers readUsers;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public LocationResource(
            ReadStock readStock, SaveLocation saveLocation, ReadUsers readUsers, Viewer viewer, AuditLog auditLog) {
        this.readStock = readStock;
        this.saveLocation = saveLocation;
        this.readUsers = readUsers;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** A location and the names of those who drive with it. */
    public record Crewed(Location location, List<String> technicians) {}

    public record LocationsPage(List<Crewed> locations) implements Page {
        @Override
        public String template() {
            return "stock/locations.jte";
        }
    }

    /**
     * The form.
     *
     * @param  technicians who can drive a van, from what the tick's field is called to what is shown beside it
     */
    public record LocationPage(Fields fields, boolean isNew, Map<String, String> types, Map<String, String> technicians)
            implements Page {
        @Override
        public String template() {
            return "stock/location-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            labels.put("name", view.t("stock.location.name"));
            labels.put("type", view.t("stock.location.type"));
            labels.put("technicians", view.t("stock.technicians"));
            labels.putAll(technicians);
            labels.put("active", view.t("settings.in-use"));
            return labels;
        }

        public Map<String, String> texts(View view) {
            Map<String, String> texts = new LinkedHashMap<>(types);
            texts.put("yes", view.t("common.yes"));
            return texts;
        }
    }

    @GET
    @Transactional
    public LocationsPage locations() {
        List<Location> locations = readStock.locations();
        Map<UserId, String> names = readUsers.namesOf(locations.stream()
                .flatMap(location -> location.technicians().stream())
                .toList());
        return new LocationsPage(locations.stream()
                .map(location -> new Crewed(
                        location,
                        location.technicians().stream()
                                .map(names::get)
                                .filter(Objects::nonNull)
                                .sorted()
                                .toList()))
                .toList());
    }

    @GET
    @Path("new")
    @Transactional
    public LocationPage fresh() {
        LocationType likeliest = readStock.locations().isEmpty() ? LocationType.STORE : LocationType.VAN;
        return page(
                Fields.showing(Map.of("id", LocationId.next().toString(), "type", likeliest.name(), "active", "yes")));
    }

    @GET
    @Path("{id}")
    @Transactional
    public LocationPage edit(@PathParam("id") String id) {
        Location location = readStock.location(LocationId.of(id));
        Map<String, String> values = values(location);
        values.put("id", location.id().toString());
        values.put("version", String.valueOf(location.version()));
        return page(Fields.showing(values));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        LocationId id = new LocationId(fields.id("id"));
        Integer version = Versions.read(fields);
        String name = fields.text("name");
        LocationType type = fields.choice("type", LocationType.class);
        List<UserId> technicians = readUsers.all().stream()
                .map(User::id)
                .filter(user -> fields.ticked(tick(user)))
                .toList();
        boolean saved = fields.run(
                () -> saveLocation.save(new Location(
                        id,
                        name,
                        type == null ? LocationType.STORE : type,
                        technicians,
                        fields.ticked("active"),
                        version)),
                refusal -> meanwhile(refusal, id));
        if (!saved) {
            return Response.status(fields.status()).entity(page(fields)).build();
        }
        auditLog.done("location.save", name);
        return Response.seeOther(URI.create("/stock/locations?done=stock.saved"))
                .build();
    }

    private Optional<Fields.Stored> meanwhile(Refusal refusal, LocationId id) {
        if (refusal instanceof InventoryRefusal.Stale || refusal instanceof InventoryRefusal.IdTaken) {
            Location theirs = readStock.location(id);
            return Optional.of(Versions.stored(theirs.version(), values(theirs)));
        }
        return Optional.empty();
    }

    private LocationPage page(Fields fields) {
        View view = viewer.view();
        Map<String, String> types = new LinkedHashMap<>();
        for (LocationType type : LocationType.values()) {
            types.put(type.name(), view.t("stock.location.type", type));
        }
        Map<UserId, String> vans = new HashMap<>();
        Set<UserId> drivers = new LinkedHashSet<>();
        for (Location location : readStock.locations()) {
            boolean other = !location.id().toString().equals(fields.typed("id"));
            location.technicians().forEach(technician -> {
                drivers.add(technician);
                if (other) {
                    vans.put(technician, location.name());
                }
            });
        }
        Map<String, String> technicians = new LinkedHashMap<>();
        readUsers.all().stream()
                .filter(user -> user.role() == Role.TECHNICIAN && user.active()
                        || drivers.contains(user.id())
                        || fields.ticked(tick(user.id())))
                .sorted(Comparator.comparing(User::name))
                .forEach(user -> {
                    String van = vans.get(user.id());
                    technicians.put(
                            tick(user.id()),
                            van == null ? user.name() : view.t("stock.technician.in", user.name(), van));
                });
        return new LocationPage(fields, Versions.isNew(fields), types, technicians);
    }

    private static String tick(UserId technician) {
        return "technician-" + technician;
    }

    private static Map<String, String> values(Location location) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("name", location.name());
        values.put("type", location.type().name());
        values.put("active", location.active() ? "yes" : "");
        location.technicians().forEach(technician -> values.put(tick(technician), "yes"));
        return values;
    }
}
