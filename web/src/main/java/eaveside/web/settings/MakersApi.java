package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.customers.MakerName;
import eaveside.customers.ModuleMaker;
import eaveside.customers.ReadModuleMakers;
import eaveside.customers.SaveModuleMaker;
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
            @Nullable Integer maxHardnessMgPerLitre,
            @Nullable Integer maxPressureKpa,
            @Nullable Integer maxDifferenceCelsius,
            @Nullable Boolean alkaliForbidden,
            @Nullable String source,
            @Nullable Integer version) {
        static Maker of(ModuleMaker maker) {
            return new Maker(
                    maker.name().value(),
                    maker.maxHardnessMgPerLitre(),
                    maker.maxPressureKpa(),
                    maker.maxDifferenceCelsius(),
                    maker.alkaliForbidden(),
                    maker.source(),
                    maker.version());
        }

        ModuleMaker read() {
            return new ModuleMaker(
                    new MakerName(Json.required("name", name)),
                    maxHardnessMgPerLitre,
                    maxPressureKpa,
                    maxDifferenceCelsius,
                    alkaliForbidden != null && alkaliForbidden,
                    Json.optional(source),
                    version == null ? 0 : version);
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
