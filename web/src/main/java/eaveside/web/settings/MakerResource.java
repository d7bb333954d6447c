package eaveside.web.settings;

import eaveside.access.Role;
import eaveside.customers.MakerName;
import eaveside.customers.ModuleMaker;
import eaveside.customers.ReadModuleMakers;
import eaveside.customers.SaveModuleMaker;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
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

/** What makers of solar modules allow when their modules are washed. */
@Path("/settings/makers")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class MakerResource {
    /** Fewer than are kept, so that a limit typed in another unit comes back as it was typed. */
    private static final int TYPED_DECIMALS = 3;

    private final ReadModuleMakers readModuleMakers;
    private final SaveModuleMaker saveModuleMaker;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public MakerResource(
            ReadModuleMakers readModuleMakers, SaveModuleMaker saveModuleMaker, Viewer viewer, Trail trail) {
        this.readModuleMakers = readModuleMakers;
        this.saveModuleMaker = saveModuleMaker;
        this.viewer = viewer;
        this.trail = trail;
    }

    public record MakersPage(List<ModuleMaker> makers) implements Page {
        @Override
        public String template() {
            return "settings/makers.jte";
        }

        /** The address of a maker's form. */
        public String address(ModuleMaker maker) {
            return UriBuilder.fromPath("/settings/makers/edit")
                    .queryParam("name", "{name}")
                    .build(maker.name().value())
                    .toString();
        }
    }

    public record MakerFormPage(Fields fields, boolean isNew) implements Page {
        @Override
        public String template() {
            return "settings/maker-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            labels.put("maxHardness", view.t("settings.maker.hardness"));
            labels.put("maxPressure", view.t("settings.maker.pressure"));
            labels.put("maxDifference", view.t("settings.maker.difference"));
            labels.put("alkaliForbidden", view.t("settings.maker.alkali.label"));
            labels.put("source", view.t("settings.maker.source"));
            return labels;
        }
    }

    @GET
    @Transactional
    public MakersPage makers() {
        return new MakersPage(readModuleMakers.all());
    }

    @GET
    @Path("edit")
    @Transactional
    public MakerFormPage edit(@QueryParam("name") @DefaultValue("") String name) {
        if (name.isBlank()) {
            return new MakerFormPage(Fields.showing(Map.of("version", "0")), true);
        }
        ModuleMaker maker = readModuleMakers.maker(new MakerName(name));
        Map<String, String> values = values(maker, viewer.view());
        values.put("version", String.valueOf(maker.version()));
        return new MakerFormPage(Fields.showing(values), false);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        String name = fields.text("name");
        View view = viewer.view();
        Quantity hardness = limit(fields, view, "maxHardness", ModuleMaker.HARDEST);
        Quantity pressure = limit(fields, view, "maxPressure", ModuleMaker.HIGHEST_PRESSURE);
        Quantity difference = limit(fields, view, "maxDifference", ModuleMaker.LARGEST_DIFFERENCE);
        boolean saved = fields.run(
                () -> saveModuleMaker.save(
                        new ModuleMaker(
                                new MakerName(name),
                                hardness,
                                pressure,
                                difference,
                                fields.ticked("alkaliForbidden"),
                                fields.optional("source"),
                                version),
                        viewer.id()),
                refusal -> refusal instanceof KernelRefusal.Stale other && other.theirs() instanceof ModuleMaker theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), values(theirs, view)))
                        : Optional.empty());
        if (!saved) {
            return Response.status(fields.status())
                    .entity(new MakerFormPage(fields, version == 0 && fields.stored() == null))
                    .build();
        }
        trail.done("maker.save", name);
        return Response.seeOther(URI.create("/settings/makers?done=settings.saved"))
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
            fields.wrong(name, "settings.maker.limit", view.quantity(most));
        }
        return fields.error(name) == null ? limit : null;
    }

    private static Map<String, String> values(ModuleMaker maker, View view) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("name", maker.name().value());
        values.put("maxHardness", text(maker.maxHardness(), view));
        values.put("maxPressure", text(maker.maxPressure(), view));
        values.put("maxDifference", text(maker.maxDifference(), view));
        values.put("alkaliForbidden", maker.alkaliForbidden() ? "yes" : "");
        values.put("source", maker.source());
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
