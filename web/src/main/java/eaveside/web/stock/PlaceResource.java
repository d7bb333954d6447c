package eaveside.web.stock;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.inventory.InventoryRefusal;
import eaveside.inventory.Place;
import eaveside.inventory.PlaceKind;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SavePlace;
import eaveside.kernel.PlaceId;
import eaveside.kernel.Refusal;
import eaveside.kernel.UserId;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
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
@Path("/stock/places")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class PlaceResource {
    private final ReadStock readStock;
    private final SavePlace savePlace;
    private final ReadUsers readUsers;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public PlaceResource(ReadStock readStock, SavePlace savePlace, ReadUsers readUsers, Viewer viewer, Trail trail) {
        this.readStock = readStock;
        this.savePlace = savePlace;
        this.readUsers = readUsers;
        this.viewer = viewer;
        this.trail = trail;
    }

    /** A place and the names of those who drive with it. */
    public record Crewed(Place place, List<String> technicians) {}

    public record PlacesPage(List<Crewed> places) implements Page {
        @Override
        public String template() {
            return "stock/places.jte";
        }
    }

    /**
     * The form.
     *
     * @param technicians who can drive a van, from what the tick's field is called to what is shown beside it
     */
    public record PlacePage(Fields fields, boolean isNew, Map<String, String> kinds, Map<String, String> technicians)
            implements Page {
        @Override
        public String template() {
            return "stock/place-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            labels.put("name", view.t("stock.place.name"));
            labels.put("kind", view.t("stock.place.kind"));
            labels.put("technicians", view.t("stock.technicians"));
            labels.putAll(technicians);
            labels.put("active", view.t("settings.in-use"));
            return labels;
        }

        public Map<String, String> texts(View view) {
            Map<String, String> texts = new LinkedHashMap<>(kinds);
            texts.put("yes", view.t("common.yes"));
            return texts;
        }
    }

    @GET
    @Transactional
    public PlacesPage places() {
        List<Place> places = readStock.places();
        Map<UserId, String> names = readUsers.namesOf(
                places.stream().flatMap(place -> place.technicians().stream()).toList());
        return new PlacesPage(places.stream()
                .map(place -> new Crewed(
                        place,
                        place.technicians().stream()
                                .map(names::get)
                                .filter(Objects::nonNull)
                                .sorted()
                                .toList()))
                .toList());
    }

    @GET
    @Path("new")
    @Transactional
    public PlacePage fresh() {
        PlaceKind likeliest = readStock.places().isEmpty() ? PlaceKind.STORE : PlaceKind.VAN;
        return page(Fields.showing(Map.of("id", PlaceId.next().toString(), "kind", likeliest.name(), "active", "yes")));
    }

    @GET
    @Path("{id}")
    @Transactional
    public PlacePage edit(@PathParam("id") String id) {
        Place place = readStock.place(PlaceId.of(id));
        Map<String, String> values = values(place);
        values.put("id", place.id().toString());
        values.put("version", String.valueOf(place.version()));
        return page(Fields.showing(values));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> typed) {
        Fields fields = viewer.fields(typed);
        PlaceId id = new PlaceId(fields.id("id"));
        Integer version = Versions.read(fields);
        String name = fields.text("name");
        PlaceKind kind = fields.choice("kind", PlaceKind.class);
        List<UserId> technicians = readUsers.all().stream()
                .map(User::id)
                .filter(user -> fields.ticked(tick(user)))
                .toList();
        boolean saved = fields.run(
                () -> savePlace.save(new Place(
                        id,
                        name,
                        kind == null ? PlaceKind.STORE : kind,
                        technicians,
                        fields.ticked("active"),
                        version)),
                refusal -> meanwhile(refusal, id));
        if (!saved) {
            return Response.status(fields.status()).entity(page(fields)).build();
        }
        trail.done("place.save", name);
        return Response.seeOther(URI.create("/stock/places?done=stock.saved")).build();
    }

    private Optional<Fields.Stored> meanwhile(Refusal refusal, PlaceId id) {
        if (refusal instanceof InventoryRefusal.Stale || refusal instanceof InventoryRefusal.IdTaken) {
            Place theirs = readStock.place(id);
            return Optional.of(Versions.stored(theirs.version(), values(theirs)));
        }
        return Optional.empty();
    }

    private PlacePage page(Fields fields) {
        View view = viewer.view();
        Map<String, String> kinds = new LinkedHashMap<>();
        for (PlaceKind kind : PlaceKind.values()) {
            kinds.put(kind.name(), view.t("stock.place.kind", kind));
        }
        Map<UserId, String> vans = new HashMap<>();
        Set<UserId> drivers = new LinkedHashSet<>();
        for (Place place : readStock.places()) {
            boolean other = !place.id().toString().equals(fields.typed("id"));
            place.technicians().forEach(technician -> {
                drivers.add(technician);
                if (other) {
                    vans.put(technician, place.name());
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
        return new PlacePage(fields, Versions.isNew(fields), kinds, technicians);
    }

    private static String tick(UserId technician) {
        return "technician-" + technician;
    }

    private static Map<String, String> values(Place place) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("name", place.name());
        values.put("kind", place.kind().name());
        values.put("active", place.active() ? "yes" : "");
        place.technicians().forEach(technician -> values.put(tick(technician), "yes"));
        return values;
    }
}
