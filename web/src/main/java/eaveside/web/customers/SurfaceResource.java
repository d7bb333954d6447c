package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.MakerName;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadModuleMakers;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceKind;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
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
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URI;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.stream.Stream;

/** The form of a surface; the kind is chosen first, since it decides what can be known of it. */
@Path("/sites/{site}/surfaces")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class SurfaceResource {
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final ReadModuleMakers readModuleMakers;
    private final SaveSurface saveSurface;
    private final Viewer viewer;
    private final Names names;

    @Inject
    public SurfaceResource(
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            ReadModuleMakers readModuleMakers,
            SaveSurface saveSurface,
            Viewer viewer,
            Names names) {
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.readModuleMakers = readModuleMakers;
        this.saveSurface = saveSurface;
        this.viewer = viewer;
        this.names = names;
    }

    /**
     * The form, and how the surface has been counted.
     *
     * @param unit       what the extent is counted in
     * @param attributes those that apply to the kind
     */
    public record SurfaceFormPage(
            Site site,
            SurfaceKind kind,
            Unit unit,
            List<SurfaceAttribute> attributes,
            Map<String, String> makers,
            List<ReadSurfaces.SurfaceCount> history,
            Names names,
            Fields fields,
            boolean isNew)
            implements Page {
        @Override
        public String template() {
            return "customers/surface-form.jte";
        }

        public SurfaceKind[] kinds() {
            return SurfaceKind.values();
        }

        /** What was typed for another kind, kept in case the kind is switched back. */
        public Map<String, String> unshown() {
            Map<String, String> unshown = new LinkedHashMap<>();
            Stream.concat(
                            kind == SurfaceKind.ARRAY ? Stream.of() : Stream.of("rows", "moduleMaker"),
                            Stream.of(SurfaceAttribute.values())
                                    .filter(attribute -> !attribute.appliesTo(kind))
                                    .map(Enum::name))
                    .filter(name -> !fields.typed(name).isEmpty())
                    .forEach(name -> unshown.put(name, fields.typed(name)));
            return unshown;
        }

        public boolean isGrade(SurfaceAttribute attribute) {
            return Known.isGrade(attribute);
        }

        public Map<String, String> choices(View view, SurfaceAttribute attribute) {
            return Known.choices(view, attribute);
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = Labels.of(view, List.of("name", "extent", "rows", "moduleMaker"));
            attributes.forEach(a -> labels.put(a.name(), view.t("customers.attribute", a)));
            labels.putAll(Labels.of(view, List.of("active")));
            return labels;
        }
    }

    @GET
    @Path("new")
    @Transactional
    public SurfaceFormPage fresh(@PathParam("site") String site, @Context UriInfo uri) {
        MultivaluedMap<String, String> typed = uri.getQueryParameters();
        Fields asked = Fields.of(typed);
        SurfaceKind chosen = asked.choice(asked.typed("switch").isEmpty() ? "kind" : "switch", SurfaceKind.class);
        SurfaceKind known = chosen == null ? SurfaceKind.ARRAY : chosen;
        Map<String, String> first = new HashMap<>();
        first.put("id", SurfaceId.next().toString());
        first.put("version", "0");
        first.put("kind", known.name());
        first.put("unit", unit(known).name());
        first.put("rows", "1");
        // A form whose kind is switched was sent whole: a box that is not in it was unticked.
        first.put("active", asked.typed("switch").isEmpty() ? "yes" : "");
        return page(readCustomer.site(SiteId.of(site)), known, Fields.of(typed).completedBy(first), true);
    }

    @GET
    @Path("{id}")
    @Transactional
    public SurfaceFormPage edit(@PathParam("site") String site, @PathParam("id") String id) {
        Surface surface = readSurfaces.surface(SurfaceId.of(id));
        Map<String, String> values = values(surface);
        values.put("id", surface.id().toString());
        values.put("version", String.valueOf(surface.version()));
        return page(readCustomer.site(surface.siteId()), surface.kind(), Fields.showing(values), false);
    }

    private static Map<String, String> values(Surface surface) {
        Map<String, String> values = new HashMap<>();
        values.put("kind", surface.kind().name());
        values.put("name", surface.name());
        values.put("unit", surface.extent().unit().name());
        values.put("extent", surface.extent().value().toPlainString());
        values.put("rows", surface.kind() == SurfaceKind.ARRAY ? String.valueOf(surface.rows()) : "");
        MakerName maker = surface.moduleMaker();
        values.put("moduleMaker", maker == null ? "" : maker.value());
        surface.attributes().forEach((attribute, value) -> values.put(attribute.name(), String.valueOf(value)));
        values.put("active", surface.active() ? "yes" : "");
        return values;
    }

    private SurfaceFormPage page(Site site, SurfaceKind kind, Fields fields, boolean isNew) {
        Map<String, String> makers = new LinkedHashMap<>();
        readModuleMakers
                .all()
                .forEach(m -> makers.put(m.name().value(), m.name().value()));
        List<SurfaceAttribute> attributes = Stream.of(SurfaceAttribute.values())
                .filter(a -> a.appliesTo(kind))
                .toList();
        return new SurfaceFormPage(
                site,
                kind,
                counted(fields, kind),
                attributes,
                makers,
                isNew ? List.of() : readSurfaces.history(new SurfaceId(fields.id("id"))),
                names,
                fields,
                isNew);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("site") String site, MultivaluedMap<String, String> form) {
        Site of = readCustomer.site(SiteId.of(site));
        Fields fields = Fields.of(form);
        SurfaceId id = new SurfaceId(fields.id("id"));
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        SurfaceKind chosen = fields.choice("kind", SurfaceKind.class);
        SurfaceKind kind = chosen == null ? SurfaceKind.ARRAY : chosen;
        String name = fields.text("name");
        Quantity extent = fields.quantity("extent", counted(fields, kind));
        int rows = kind == SurfaceKind.ARRAY ? fields.integer("rows", 1, 1000) : 0;
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        for (SurfaceAttribute attribute : SurfaceAttribute.values()) {
            if (attribute.appliesTo(kind) && !fields.typed(attribute.name()).isBlank()) {
                attributes.put(attribute, fields.integer(attribute.name(), attribute.lowest(), attribute.highest()));
            }
        }
        String maker = kind == SurfaceKind.ARRAY ? fields.optional("moduleMaker") : "";
        boolean saved = fields.run(
                () -> saveSurface.save(
                        new Surface(
                                id,
                                of.id(),
                                kind,
                                name,
                                extent,
                                rows,
                                maker.isEmpty() ? null : new MakerName(maker),
                                attributes,
                                fields.ticked("active"),
                                version),
                        viewer.id()),
                refusal -> refusal instanceof CustomersRefusal.EditedMeanwhile other
                                && other.theirs() instanceof Surface theirs
                        ? Optional.of(new Fields.Stored(theirs.version(), values(theirs)))
                        : Optional.empty());
        return saved
                ? Response.seeOther(URI.create("/customers/" + of.customerId() + "?done=customers.saved"))
                        .build()
                : Response.status(fields.status())
                        .entity(page(of, kind, fields, version == 0))
                        .build();
    }

    /** A surface that is there already stays in its unit, whatever the company measures in today. */
    private Unit counted(Fields fields, SurfaceKind kind) {
        return kind.units().stream()
                .filter(unit -> unit.name().equals(fields.typed("unit")))
                .findFirst()
                .orElseGet(() -> unit(kind));
    }

    /** Of the units that fit the kind, the one that the company measures in. */
    private Unit unit(SurfaceKind kind) {
        List<Unit> units = kind.units();
        Unit own = viewer.view().us() ? Unit.SQUARE_FOOT : Unit.SQUARE_METRE;
        return units.contains(own) ? own : units.getFirst();
    }
}
