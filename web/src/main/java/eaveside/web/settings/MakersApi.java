package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.customers.MakerName;
import eaveside.customers.ModuleMaker;
import eaveside.customers.ReadModuleMakers;
import eaveside.customers.SaveModuleMaker;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
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

/** What makers of solar modules allow when their modules are washed, for scripts. */
@Path("/api/settings/makers")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@For({Role.OWNER, Role.OFFICE})
@Tag(name = "Settings")
public class MakersApi {
    private final ReadModuleMakers readModuleMakers;
    private final SaveModuleMaker saveModuleMaker;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public MakersApi(ReadModuleMakers readModuleMakers, SaveModuleMaker saveModuleMaker, Viewer viewer, Trail trail) {
        this.readModuleMakers = readModuleMakers;
        this.saveModuleMaker = saveModuleMaker;
        this.viewer = viewer;
        this.trail = trail;
    }

    /**
     * A maker's limits; one that the manual does not give is absent.
     *
     * @param maxHardnessMgPerLitre of the water, in milligrams per litre
     * @param maxPressureKpa        of the water, in kilopascals
     * @param maxDifferenceCelsius  between water and glass, in degrees Celsius
     * @param alkaliForbidden       false where absent
     * @param source                which manual, and where in it
     * @param version               as read; absent for a new one
     */
    public record Maker(
            @Nullable String name,
            @Nullable BigDecimal maxHardnessMgPerLitre,
            @Nullable BigDecimal maxPressureKpa,
            @Nullable BigDecimal maxDifferenceCelsius,
            @Nullable Boolean alkaliForbidden,
            @Nullable String source,
            @Nullable Integer version) {
        static Maker of(ModuleMaker maker) {
            return new Maker(
                    maker.name().value(),
                    value(maker.maxHardness()),
                    value(maker.maxPressure()),
                    value(maker.maxDifference()),
                    maker.alkaliForbidden(),
                    maker.source(),
                    maker.version());
        }

        ModuleMaker read() {
            return new ModuleMaker(
                    new MakerName(Json.required("name", name)),
                    quantity("maxHardnessMgPerLitre", maxHardnessMgPerLitre, Unit.MILLIGRAM_PER_LITRE),
                    quantity("maxPressureKpa", maxPressureKpa, Unit.KILOPASCAL),
                    quantity("maxDifferenceCelsius", maxDifferenceCelsius, Unit.CELSIUS_DEGREE),
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
    @Operation(summary = "Makers by name")
    public List<Maker> makers() {
        return readModuleMakers.all().stream().map(Maker::of).toList();
    }

    /** The name is in the body: it may hold what an address cannot, such as a slash. */
    @PUT
    @Operation(summary = "Adds the maker named, or changes the version named; the same again changes nothing")
    public Maker save(@Nullable Maker body) {
        ModuleMaker saved = saveModuleMaker.save(Json.required("body", body).read(), viewer.id());
        trail.done("maker.save", saved.name());
        return Maker.of(saved);
    }
}
