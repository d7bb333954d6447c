package eaveside.web.settings;

import eaveside.customers.ManufacturerName;
import eaveside.customers.PanelManufacturer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.SavePanelManufacturer;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.View;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.math.RoundingMode;
import java.util.Map;

/** What manufacturers of solar panels allow when their panels are washed; typed and shown in the company's units. */
@Path("/settings/manufacturers")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ManufacturerPages extends ListResource<PanelManufacturer> {
    private static final String HERE = "/settings/manufacturers";

    /** Fewer than are kept, so that a limit typed in another unit comes back as it was typed. */
    private static final int TYPED_DECIMALS = 3;

    private static final Map<String, Unit> KEPT_IN = Map.of(
            "maxHardness", PanelManufacturer.HARDEST.unit(),
            "maxPressure", PanelManufacturer.HIGHEST_PRESSURE.unit(),
            "maxTemperatureDifference", PanelManufacturer.LARGEST_TEMPERATURE_DIFFERENCE.unit());

    @Inject
    ReadPanelManufacturers readPanelManufacturers;

    @Inject
    SavePanelManufacturer savePanelManufacturer;

    @Override
    protected Listing<PanelManufacturer> list() {
        return Listing.whole("settings.manufacturers", HERE, query -> readPanelManufacturers.all())
                .within("settings.title", "/settings")
                .cautions("manual", "glass", "soap")
                .searchedBy("name")
                .opening("name", ManufacturerPages::address)
                .columns("maxHardness", "maxPressure", "maxTemperatureDifference", "alkaliForbidden", "source")
                .action("new", HERE + "/edit");
    }

    /** A name may hold what a path cannot, such as a slash. */
    private static String address(PanelManufacturer manufacturer) {
        return UriBuilder.fromPath(HERE + "/edit")
                .queryParam("name", "{name}")
                .build(manufacturer.name().value())
                .toString();
    }

    /** The form of the manufacturer named, or of a new one. */
    @GET
    @Path("edit")
    @Transactional
    public EditPage edit(@QueryParam("name") @DefaultValue("") String name) {
        return page(
                name.isEmpty()
                        ? viewer.fresh(PanelManufacturer.class)
                        : Form.showing(
                                readPanelManufacturers.manufacturer(new ManufacturerName(name)),
                                viewer.notation(),
                                this::typed));
    }

    @POST
    public Response save(Form<PanelManufacturer> form) {
        EditPage page = page(form);
        boolean saved = form.run(manufacturer -> savePanelManufacturer.save(manufacturer, viewer.id()));
        View view = viewer.view();
        for (Unit unit : KEPT_IN.values()) {
            // Refusals name units by their codes, people by their signs.
            Unit own = view.unitOf(unit);
            form.fields().reword(text -> text.replaceFirst(" " + own.code() + "$", " " + view.unit(own)));
        }
        return page.saved(saved);
    }

    private EditPage page(Form<PanelManufacturer> form) {
        View view = viewer.view();
        form.in(field -> view.unitOf(KEPT_IN.getOrDefault(field, Unit.ONE))).measured(this::typed);
        return EditPage.of(form, "settings.manufacturers", HERE).fixing("name");
    }

    private Quantity typed(Quantity limit) {
        Quantity own = limit.in(viewer.view().unitOf(limit.unit()));
        return Quantity.of(
                own.value().setScale(TYPED_DECIMALS, RoundingMode.HALF_UP).stripTrailingZeros(), own.unit());
    }
}
