package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.customers.ManufacturerName;
import eaveside.customers.PanelManufacturer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.SavePanelManufacturer;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
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
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriBuilder;
import java.math.RoundingMode;
import java.net.URI;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** What manufacturers of solar panels allow when their modules are washed. */
@Path("/settings/manufacturers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class ManufacturerResource {
    /** Fewer than are kept, so that a limit typed in another unit comes back as it was typed. */
    private static final int TYPED_DECIMALS = 3;

    private final ReadPanelManufacturers readPanelManufacturers;
    private final SavePanelManufacturer savePanelManufacturer;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public ManufacturerResource(
            ReadPanelManufacturers readPanelManufacturers,
            SavePanelManufacturer savePanelManufacturer,
            Viewer viewer,
            AuditLog auditLog) {
        this.readPanelManufacturers = readPanelManufacturers;
        this.savePanelManufacturer = savePanelManufacturer;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    public record ManufacturersPage(List<PanelManufacturer> manufacturers) implements Page {
        @Override
        public String template() {
            return "settings/manufacturers.jte";
        }

        /** The address of a manufacturer's form. */
        public String address(PanelManufacturer manufacturer) {
            return UriBuilder.fromPath("/settings/manufacturers/edit")
                    .queryParam("name", "{name}")
                    .build(manufacturer.name().value())
                    .toString();
        }
    }

    public record ManufacturerFormPage(Fields fields, boolean isNew) implements Page {
        @Override
        public String template() {
            return "settings/manufacturer-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            labels.put("maxHardness", view.t("settings.manufacturer.hardness"));
            labels.put("maxPressure", view.t("settings.manufacturer.pressure"));
            labels.put("maxTemperatureDifference", view.t("settings.manufacturer.difference"));
            labels.put("alkaliForbidden", view.t("settings.manufacturer.alkali.label"));
            labels.put("source", view.t("settings.manufacturer.source"));
            return labels;
        }
    }

    @GET
    @Transactional
    public ManufacturersPage manufacturers() {
        return new ManufacturersPage(readPanelManufacturers.all());
    }

    @GET
    @Path("edit")
    @Transactional
    public ManufacturerFormPage edit(@QueryParam("name") @DefaultValue("") String name) {
        if (name.isBlank()) {
            return new ManufacturerFormPage(Fields.showing(Map.of("version", "0")), true);
        }
        PanelManufacturer manufacturer = readPanelManufacturers.manufacturer(new ManufacturerName(name));
        Map<String, String> values = values(manufacturer, viewer.view());
        values.put("version", String.valueOf(manufacturer.version()));
        return new ManufacturerFormPage(Fields.showing(values), false);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String name = fields.text("name");
        View view = viewer.view();
        Quantity hardness = limit(fields, view, "maxHardness", PanelManufacturer.HARDEST);
        Quantity pressure = limit(fields, view, "maxPressure", PanelManufacturer.HIGHEST_PRESSURE);
        Quantity difference =
                limit(fields, view, "maxTemperatureDifference", PanelManufacturer.LARGEST_TEMPERATURE_DIFFERENCE);
        boolean saved = fields.run(
                () -> savePanelManufacturer.save(
                        new PanelManufacturer(
                                new ManufacturerName(name),
                                hardness,
                                pressure,
                                difference,
                                fields.ticked("alkaliForbidden"),
                                fields.optional("source"),
                                version),
                        viewer.id()),
                refusal -> refusal instanceof KernelRefusal.Stale other
                                && other.theirs() instanceof PanelManufacturer theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), values(theirs, view)))
                        : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(new ManufacturerFormPage(fields, version == 0 && fields.stored() == null))
                    .build();
        }
        auditLog.done("manufacturer.save", name);
        return Response.seeOther(URI.create("/settings/manufacturers?done=settings.saved"))
                .build();
    }

    /** Typed in what the company measures in. */
    private static @Nullable Quantity limit(Fields fields, View view, String name, Quantity highest) {
        if (fields.optional(name).isEmpty()) {
            return null;
        }
        Quantity most = highest.in(view.unitOf(highest.unit()));
        Quantity limit = fields.quantity(name, most.unit());
        if (fields.error(name) == null && (!limit.isPositive() || limit.compareTo(most) > 0)) {
            fields.wrong(name, "settings.manufacturer.limit", view.quantity(most));
        }
        return fields.error(name) == null ? limit : null;
    }

    private static Map<String, String> values(PanelManufacturer manufacturer, View view) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("name", manufacturer.name().value());
        values.put("maxHardness", text(manufacturer.maxHardness(), view));
        values.put("maxPressure", text(manufacturer.maxPressure(), view));
        values.put("maxTemperatureDifference", text(manufacturer.maxTemperatureDifference(), view));
        values.put("alkaliForbidden", manufacturer.alkaliForbidden() ? "yes" : "");
        values.put("source", manufacturer.source());
        return values;
    }

    private static String text(@Nullable Quantity limit, View view) {
        return limit == null
                ? ""
                : limit.in(view.unitOf(limit.unit()))
                        .value()
                        .setScale(TYPED_DECIMALS, RoundingMode.HALF_UP)
                        .stripTrailingZeros()
                        .toPlainString();
    }
}
