package eaveside.web.customers;

import eaveside.access.Role;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
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
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** The form of a surface; the type is chosen first, since it decides what can be known of it. */
@Path("/sites/{siteId}/surfaces")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class SurfacePages {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadPanelManufacturers readPanelManufacturers;

    @Inject
    SaveSurface saveSurface;

    @Inject
    Viewer viewer;

    @Inject
    Names names;

    /**
     * The form, and how the surface has been counted.
     *
     * @param  unit what the extent is counted in
     */
    public record SurfaceForm(
            Site site,
            SurfaceType type,
            Unit unit,
            Map<String, String> manufacturers,
            List<ReadSurfaces.SurfaceCount> history,
            Names names,
            Form<Surface> form)
            implements Page {
        @Override
        public String template() {
            return "customers/surface-form.jte";
        }

        public SurfaceType[] types() {
            return SurfaceType.values();
        }

        /** Those that can be known of the type. */
        public List<SurfaceAttribute> attributes() {
            return Stream.of(SurfaceAttribute.values())
                    .filter(attribute -> attribute.appliesTo(type))
                    .toList();
        }

        /** What was typed for another type, kept in case the type is switched back. */
        public Map<String, String> unshown() {
            Map<String, String> unshown = new LinkedHashMap<>();
            notOf(type).stream()
                    .filter(name -> !form.fields().typed(name).isEmpty())
                    .forEach(name -> unshown.put(name, form.fields().typed(name)));
            return unshown;
        }

        public boolean isGrade(SurfaceAttribute attribute) {
            return Known.isGrade(attribute);
        }

        public Map<String, String> choices(View view, SurfaceAttribute attribute) {
            return Known.choices(view, attribute);
        }
    }

    /** A new surface; when its type is switched, with everything that was typed so far. */
    @GET
    @Path("new")
    @Transactional
    public SurfaceForm fresh(@PathParam("siteId") SiteId site, @Context UriInfo uri) {
        MultivaluedMap<String, String> typed = new MultivaluedHashMap<>(uri.getQueryParameters());
        String switched = typed.getFirst("switch");
        SurfaceType type = Stream.of(SurfaceType.values())
                .filter(k -> k.name().equals(switched == null ? typed.getFirst("type") : switched))
                .findFirst()
                .orElse(SurfaceType.ARRAY);
        typed.putSingle("type", type.name());
        Map<String, String> first = Map.of(
                "id",
                SurfaceId.next().toString(),
                "extentUnit",
                unit(type).code(),
                "rows",
                "1",
                // A form whose type is switched was sent whole: a box that is not in it was cleared.
                "active",
                switched == null ? "yes" : "");
        return page(site, Form.sent(Surface.class, viewer.fields(typed).completedBy(first)));
    }

    @GET
    @Path("{id}")
    @Transactional
    public SurfaceForm edit(@PathParam("id") SurfaceId id) {
        Surface surface = readSurfaces.surface(id);
        return page(surface.siteId(), viewer.form(surface));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("siteId") SiteId site, Form<Surface> form) {
        SurfaceType type = type(form);
        form.ignoring(notOf(type));
        // Grades are told their own bounds, even where something else is wrong as well.
        Stream.of(SurfaceAttribute.values())
                .filter(attribute -> attribute.appliesTo(type)
                        && !form.fields().typed(attribute.name()).isBlank())
                .forEach(attribute -> form.fields().integer(attribute.name(), attribute.lowest(), attribute.highest()));
        return form.run(surface -> saveSurface.save(surface, viewer.id()))
                ? Respond.to("/customers/" + readCustomer.site(site).customerId(), "customers.saved")
                : Respond.again(form.fields(), page(site, form));
    }

    private static SurfaceType type(Form<Surface> form) {
        return SurfaceType.valueOf(form.chosen("type", SurfaceType.ARRAY.name()));
    }

    /** The fields that surfaces of the type do not have. */
    private static List<String> notOf(SurfaceType type) {
        return Stream.concat(
                        type == SurfaceType.ARRAY ? Stream.of() : Stream.of("rows", "panelManufacturer"),
                        Stream.of(SurfaceAttribute.values())
                                .filter(attribute -> !attribute.appliesTo(type))
                                .map(Enum::name))
                .toList();
    }

    private SurfaceForm page(SiteId siteId, Form<Surface> form) {
        SurfaceType type = type(form);
        String unit = form.fields().typed("extentUnit");
        Map<String, String> manufacturers = new LinkedHashMap<>();
        readPanelManufacturers
                .all()
                .forEach(manufacturer -> manufacturers.put(
                        manufacturer.name().value(), manufacturer.name().value()));
        return new SurfaceForm(
                readCustomer.site(siteId),
                type,
                // A surface that is there already stays in its unit, whatever the company measures in today.
                type.units().stream()
                        .filter(u -> u.code().equals(unit))
                        .findFirst()
                        .orElseGet(() -> unit(type)),
                manufacturers,
                form.isNew()
                        ? List.of()
                        : readSurfaces.history(new SurfaceId(form.fields().id("id"))),
                names,
                form.labeled("customers"));
    }

    /** Of the units that fit the type, the one that the company measures in. */
    private Unit unit(SurfaceType type) {
        Unit own = viewer.view().us() ? Unit.SQUARE_FOOT : Unit.SQUARE_METER;
        return type.units().contains(own) ? own : type.units().getFirst();
    }
}
