package eaveside.web.stock;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.inventory.Location;
import eaveside.inventory.LocationType;
import eaveside.inventory.ReadStock;
import eaveside.inventory.SaveLocation;
import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
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
import jakarta.ws.rs.core.Response;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Collectors;

/** The list of store rooms and vans, and its form. */
@Path("/stock/locations")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class LocationPages extends ListResource<Location> {
    private static final String TEXTS = "stock.locations";

    @Inject
    ReadStock readStock;

    @Inject
    SaveLocation saveLocation;

    @Inject
    ReadUsers readUsers;

    public record LocationForm(Form<Location> form) implements Page {
        @Override
        public String template() {
            return "stock/location-form.jte";
        }
    }

    @Override
    protected Listing<Location> list() {
        List<Location> locations = readStock.locations();
        Map<UserId, String> names = readUsers.namesOf(locations.stream()
                .flatMap(location -> location.technicians().stream())
                .toList());
        View view = viewer.view();
        return Listing.whole(TEXTS, "/stock/locations", query -> locations)
                .opening("name", location -> "/stock/locations/" + location.id())
                .columns("type")
                .column(
                        "technicians",
                        location -> location.technicians().stream()
                                .map(names::get)
                                .filter(Objects::nonNull)
                                .sorted()
                                .collect(Collectors.joining(", ")))
                .columns("active")
                .column(
                        "stock",
                        location -> view.t("stock.locations.open"),
                        location -> "/stock?location=" + location.id())
                .action("new", "/stock/locations/new");
    }

    @GET
    @Path("new")
    @Transactional
    public LocationForm fresh() {
        LocationType likeliest = readStock.locations().isEmpty() ? LocationType.STORE : LocationType.VAN;
        return page(viewer.form(
                Location.class, Map.of("id", LocationId.next().toString(), "type", likeliest.name(), "active", "yes")));
    }

    @GET
    @Path("{id}")
    @Transactional
    public LocationForm edit(@PathParam("id") LocationId id) {
        return page(viewer.form(readStock.location(id)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<Location> form) {
        // The names of technicians, for the two versions of a form that came second.
        LocationForm page = page(form);
        return form.run(location -> saveLocation.save(location, viewer.id()))
                ? Respond.to("/stock/locations", "stock.locations.saved")
                : Respond.again(form.fields(), page);
    }

    /** Technicians, and whoever else has a van or is chosen, each with the van that they have now. */
    private LocationForm page(Form<Location> form) {
        View view = viewer.view();
        List<String> chosen = form.fields().all("technicians");
        Map<UserId, Location> vans = new HashMap<>();
        readStock.locations().forEach(van -> van.technicians().forEach(technician -> vans.put(technician, van)));
        Map<String, String> technicians = new LinkedHashMap<>();
        readUsers.all().stream()
                .filter(user -> user.role() == Role.TECHNICIAN && user.active()
                        || vans.containsKey(user.id())
                        || chosen.contains(user.id().toString()))
                .sorted(Comparator.comparing(User::name))
                .forEach(user -> {
                    Location van = vans.get(user.id());
                    technicians.put(
                            user.id().toString(),
                            van == null
                                            || van.id()
                                                    .toString()
                                                    .equals(form.fields().typed("id"))
                                    ? user.name()
                                    : view.t("stock.locations.technician-in", user.name(), van.name()));
                });
        return new LocationForm(form.labeled(TEXTS).choosing("technicians", technicians));
    }
}
