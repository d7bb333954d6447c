package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.customers.ManufacturerName;
import eaveside.customers.PanelManufacturer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.SavePanelManufacturer;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.Json;
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
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.math.BigDecimal;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** What manufacturers of solar panels allow when their modules are washed, for scripts. */
@Path("/api/settings/manufacturers")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Settings")
public class ManufacturersApi {
    private final ReadPanelManufacturers readPanelManufacturers;
    private final SavePanelManufacturer savePanelManufacturer;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public ManufacturersApi(
            ReadPanelManufacturers readPanelManufacturers,
            SavePanelManufacturer savePanelManufacturer,
            Viewer viewer,
            AuditLog auditLog) {
        this.readPanelManufacturers = readPanelManufacturers;
        this.savePanelManufacturer = savePanelManufacturer;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /**
     * A manufacturer's limits; one that the manual does not give is absent.
     *
     * @param  maxHardnessMgPerLiter of the water, in milligrams per liter
     * @param  maxPressureKpa        of the water, in kilopascals
     * @param  maxTemperatureDifferenceCelsius  between water and glass, in degrees Celsius
     * @param  alkaliForbidden       false where absent
     * @param  source                which manual, and where in it
     * @param  version               as read; absent for a new one
     */
    public record Manufacturer(
            @Nullable String name,
            @Nullable BigDecimal maxHardnessMgPerLiter,
            @Nullable BigDecimal maxPressureKpa,
            @Nullable BigDecimal maxTemperatureDifferenceCelsius,
            @Nullable Boolean alkaliForbidden,
            @Nullable String source,
            @Nullable Integer version) {
        static Manufacturer of(PanelManufacturer manufacturer) {
            return new Manufacturer(
                    manufacturer.name().value(),
                    value(manufacturer.maxHardness()),
                    value(manufacturer.maxPressure()),
                    value(manufacturer.maxTemperatureDifference()),
                    manufacturer.alkaliForbidden(),
                    manufacturer.source(),
                    manufacturer.version());
        }

        PanelManufacturer read() {
            return new PanelManufacturer(
                    new ManufacturerName(Json.required("name", name)),
                    quantity("maxHardnessMgPerLiter", maxHardnessMgPerLiter, Unit.MILLIGRAM_PER_LITER),
                    quantity("maxPressureKpa", maxPressureKpa, Unit.KILOPASCAL),
                    quantity("maxTemperatureDifferenceCelsius", maxTemperatureDifferenceCelsius, Unit.CELSIUS_DEGREE),
                    alkaliForbidden != null && alkaliForbidden,
                    Json.optional(source),
                    version == null ? 0 : version);
        }

        private static @Nullable BigDecimal value(@Nullable Quantity limit) {
            return limit == null ? null : limit.value();
        }

        private static @Nullable Quantity quantity(String field, @Nullable BigDecimal value, Unit unit) {
            return value == null ? null : Quantity.rounded(Json.decimal(field, value), unit);
        }
    }

    @GET
    @Transactional
    @Operation(summary = "Manufacturers by name")
    public List<Manufacturer> manufacturers() {
        return readPanelManufacturers.all().stream().map(Manufacturer::of).toList();
    }

    /** The name is in the body: it may hold what an address cannot, such as a slash. */
    @PUT
    @Operation(summary = "Adds the manufacturer named, or changes the version named; the same again changes nothing")
    public Manufacturer save(@Nullable Manufacturer body) {
        PanelManufacturer saved =
                savePanelManufacturer.save(Json.required("body", body).read(), viewer.id());
        auditLog.done("manufacturer.save", saved.name());
        return Manufacturer.of(saved);
    }
}
