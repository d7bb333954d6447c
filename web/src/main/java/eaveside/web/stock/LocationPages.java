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
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.EditResource;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Options;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** The list of store rooms and vans, and its form. */
@Path("/stock/locations")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class LocationPages extends EditResource<Location, LocationId> {
    @Inject
    ReadStock readStock;

    @Inject
    SaveLocation saveLocation;

    @Inject
    ReadUsers readUsers;

    @Inject
    Names names;

    public LocationPages() {
        super(Location.class, "stock.locations", "/stock/locations");
    }

    @Override
    protected Listing<Location> list() {
        View view = viewer.view();
        List<Location> locations = readStock.locations();
        names.lookUpUsers(locations.stream().flatMap(location -> location.technicians().stream()));
        return rows(() -> locations)
                .opening("name", location -> at(location.id()))
                .columns("type")
                .column(
                        "technicians",
                        location -> location.technicians().stream()
                                .map(names::user)
                                .sorted()
                                .collect(Collectors.joining(", ")))
                .columns("active")
                .column(
                        "stock",
                        location -> view.t("stock.locations.open"),
                        location -> "/stock?location=" + location.id());
    }

    @Override
    protected Map<String, String> first() {
        LocationType likeliest = readStock.locations().isEmpty() ? LocationType.STORE : LocationType.VAN;
        return Map.of("type", likeliest.name());
    }

    @Override
    protected Location stored(LocationId id) {
        return readStock.location(id);
    }

    @Override
    protected void save(Location location) {
        saveLocation.save(location, viewer.id());
    }

    /** With technicians, and whoever else has a van or is chosen, each with the van that they have now. */
    @Override
    protected EditPage page(Form<Location> form) {
        View view = viewer.view();
        Fields fields = form.fields();
        Map<UserId, Location> vans = new HashMap<>();
        readStock.locations().forEach(van -> van.technicians().forEach(technician -> vans.put(technician, van)));
        List<User> technicians = readUsers.all().stream()
                .filter(user -> user.role() == Role.TECHNICIAN && user.active()
                        || vans.containsKey(user.id())
                        || fields.all("technicians").contains(user.id().toString()))
                .toList();
        Map<String, String> choices = Options.of(technicians, User::id, user -> {
            Location van = vans.get(user.id());
            return van == null || van.id().toString().equals(fields.typed("id"))
                    ? user.name()
                    : view.t("stock.locations.technician-in", user.name(), van.name());
        });
        return super.page(form.choosing("technicians", choices)).shownBy("stock/location-form.jte");
    }
}
