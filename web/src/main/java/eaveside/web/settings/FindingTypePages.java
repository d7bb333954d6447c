package eaveside.web.settings;

import eaveside.findings.FindingType;
import eaveside.findings.FindingTypeCode;
import eaveside.findings.ReadFindings;
import eaveside.findings.SaveFindingType;
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

/** What technicians may report, which licensed trade mends it and what the customer is told meanwhile. */
@Path("/settings/finding-types")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class FindingTypePages extends ListResource<FindingType> {
    @Inject
    ReadFindings readFindings;

    @Inject
    SaveFindingType saveFindingType;

    @Override
    protected Listing<FindingType> list() {
        return Listing.whole(
                        "settings.finding-types",
                        "/settings/finding-types",
                        query -> readFindings.types().stream()
                                .filter(type -> query.finds(type.name(), type.trade(), type.caution()))
                                .toList())
                .within("settings.title", "/settings")
                .about("intro")
                .searched()
                .opening("name", type -> "/settings/finding-types/" + type.code())
                .columns("trade", "caution", "active")
                .action("new", "/settings/finding-types/new");
    }

    @GET
    @Path("new")
    @Transactional
    public EditPage fresh() {
        return page(viewer.form(FindingType.class, Map.of("active", "yes")));
    }

    @GET
    @Path("{code}")
    @Transactional
    public EditPage edit(@PathParam("code") String code) {
        return page(viewer.form(readFindings.type(new FindingTypeCode(code))));
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response save(Form<FindingType> form) {
        return page(form).saved(form.run(type -> saveFindingType.save(type, viewer.id())));
    }

    private static EditPage page(Form<FindingType> form) {
        return EditPage.of(form, "settings.finding-types", "/settings/finding-types")
                .fixing("code")
                .areas("caution");
    }
}
