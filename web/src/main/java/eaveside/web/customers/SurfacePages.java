package eaveside.web.customers;

import eaveside.customers.PanelManufacturer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadPanelManufacturers;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.SaveSurface;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceCount;
import eaveside.customers.SurfaceType;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Form;
import eaveside.web.forms.Options;
import eaveside.web.forms.Respond;
import eaveside.web.forms.Shape;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
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
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The form of a surface; the type is chosen first, since it decides what can be known of it. */
@Path("/sites/{site}/surfaces")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
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

    /** The form, and how the surface has been counted. */
    public record SurfaceForm(Site site, Form<Surface> form, List<SurfaceCount> history, Names names) implements Page {
        public SurfaceType type() {
            return SurfacePages.type(form);
        }

        /** A surface that is there already stays in its unit, whatever the company measures in today. */
        public Unit unit(View view) {
            String typed = form.fields().typed("extentUnit");
            return type().units().stream()
                    .filter(unit -> unit.code().equals(typed))
                    .findFirst()
                    .orElseGet(() -> view.unitOf(type().units().getFirst()));
        }

        /** The fields of other types in which something was typed, kept in case the type is switched back. */
        public List<String> unshown() {
            return type().lacks().stream()
                    .filter(name -> !form.fields().typed(name).isEmpty())
                    .toList();
        }
    }

    /**
     * A new surface.
     *
     * @param  switched the type that it shall have instead; the form then keeps all that was typed so far
     */
    @GET
    @Path("new")
    @Transactional
    public SurfaceForm fresh(
            @PathParam("site") SiteId site,
            @QueryParam("type") @Nullable SurfaceType asked,
            @QueryParam("switch") @Nullable SurfaceType switched,
            @Context UriInfo uri) {
        SurfaceType type = switched != null ? switched : asked != null ? asked : SurfaceType.ARRAY;
        Map<String, String> first = new HashMap<>(Shape.of(Surface.class).fresh());
        first.put("rows", "1");
        if (switched != null) {
            first.remove("active"); // that form was sent whole: a box that is not in it was cleared
        }
        uri.getQueryParameters().forEach((name, values) -> first.put(name, values.getFirst()));
        first.put("type", type.name());
        return page(site, viewer.form(Surface.class, first));
    }

    @GET
    @Path("{id}")
    @Transactional
    public SurfaceForm edit(@PathParam("id") SurfaceId id) {
        Surface surface = readSurfaces.surface(id);
        return page(surface.site(), viewer.form(surface));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(@PathParam("site") SiteId site, Form<Surface> form) {
        SurfaceType type = type(form);
        form.ignoring(type.lacks());
        // Grades are told their own bounds, even where something else is wrong as well.
        for (SurfaceAttribute attribute : type.attributes()) {
            if (!form.fields().typed(attribute.name()).isBlank()) {
                form.fields().integer(attribute.name(), attribute.lowest(), attribute.highest());
            }
        }
        return form.run(surface -> saveSurface.save(surface, viewer.id()))
                ? Respond.to("/customers/" + readCustomer.site(site).customer(), "customers.saved")
                : Respond.again(form.fields(), page(site, form));
    }

    private static SurfaceType type(Form<Surface> form) {
        return SurfaceType.valueOf(form.chosen("type", SurfaceType.ARRAY.name()));
    }

    private SurfaceForm page(SiteId site, Form<Surface> form) {
        SurfaceForm page = new SurfaceForm(
                readCustomer.site(site),
                form.labeled("customers")
                        .choosing(
                                "panelManufacturer",
                                Options.of(
                                        readPanelManufacturers.all(),
                                        PanelManufacturer::name,
                                        one -> one.name().value())),
                form.isNew()
                        ? List.of()
                        : readSurfaces.history(new SurfaceId(form.fields().id("id"))),
                names);
        form.fields().called("extent", viewer.view().t("customers.extent." + page.type()));
        return page;
    }
}
