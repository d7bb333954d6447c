package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.kernel.ServiceLineId;
import eaveside.web.forms.EditPage;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.Map;

/** Service lines: the parts of the business whose margin the owner reads. */
@Path("/settings/service-lines")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class ServiceLinePages extends ListResource<ServiceLine> {
    @Inject
    Catalog catalog;

    @Inject
    SaveServiceLine saveServiceLine;

    @Override
    protected Listing<ServiceLine> list() {
        return Listing.whole(
                        "settings.service-lines",
                        "/settings/service-lines",
                        query -> catalog.lines().stream()
                                .filter(line -> query.finds(line.code(), line.name()))
                                .toList())
                .within("settings.title", "/settings")
                .searched()
                .opening("code", line -> "/settings/service-lines/" + line.id())
                .columns("name", "active")
                .action("new", "/settings/service-lines/new");
    }

    @GET
    @Path("new")
    @Transactional
    public EditPage fresh() {
        return page(
                viewer.form(ServiceLine.class, Map.of("id", ServiceLineId.next().toString(), "active", "yes")));
    }

    @GET
    @Path("{id}")
    @Transactional
    public EditPage edit(@PathParam("id") ServiceLineId id) {
        return page(viewer.form(catalog.line(id)));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<ServiceLine> form) {
        return page(form).saved(form.run(line -> saveServiceLine.save(line, viewer.id())));
    }

    private static EditPage page(Form<ServiceLine> form) {
        return EditPage.of(form, "settings.service-lines", "/settings/service-lines");
    }
}
