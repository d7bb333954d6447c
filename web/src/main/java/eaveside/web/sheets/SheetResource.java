package eaveside.web.sheets;

import eaveside.kernel.PhotoId;
import eaveside.kernel.VisitId;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.visits.VisitStatus;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import eaveside.web.visits.SheetFacts;
import eaveside.web.visits.SheetFacts.Facts;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Map;

/**
 * A visit's sheet on the phone. It is sent as a plain form; the page's script sends the same form and asks for JSON back,
 * so that it can keep the sheet until it has gone through.
 */
@Path("/sheets/{visit: [0-9a-fA-F-]{36}}")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class SheetResource {
    @Inject
    ReadVisits readVisits;

    @Inject
    ReadSheets readSheets;

    @Inject
    TakeSheet takeSheet;

    @Inject
    SheetPages sheetPages;

    @Inject
    SheetFacts sheetFacts;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    /** A sheet that is signed off; the photos are those that no finding shows. */
    public record SignedPage(Visit visit, Facts facts, List<PhotoId> photos, Names names) implements Page {}

    /** A visit that will not take place. */
    public record CanceledPage(Visit visit, String customer) implements Page {}

    /** Where the phone goes on. */
    public record Sent(String location) {}

    /** Why the phone's sheet did not go through: by field, empty for the sheet as a whole. */
    public record NotSent(String title, Map<String, String> errors) {}

    @GET
    @Produces(MediaType.TEXT_HTML)
    @Transactional
    public Page sheet(@PathParam("visit") VisitId id, @QueryParam("location") @DefaultValue("") String location) {
        Visit visit = readVisits.visitFor(viewer.id(), id);
        if (visit.status() == VisitStatus.CANCELED) {
            return new CanceledPage(visit, names.customer(visit.customer()));
        }
        if (visit.sheet() == null) {
            return sheetPages.blank(visit, location);
        }
        Facts facts = sheetFacts.of(visit, readSheets.sheet(visit.sheet()));
        return new SignedPage(visit, facts, sheetFacts.otherPhotos(id, facts), names);
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Produces(MediaType.TEXT_HTML)
    public Response signOff(@PathParam("visit") VisitId id, MultivaluedMap<String, String> form) {
        if (form.containsKey(Rows.MORE)) {
            return Response.ok(page(id, TakeSheet.fields(Rows.withAnother(form), viewer.notation())))
                    .build();
        }
        Fields fields = TakeSheet.fields(form, viewer.notation());
        String next = takeSheet.take(id, form, fields);
        return next == null
                ? Respond.again(fields, page(id, fields))
                : Response.seeOther(URI.create(next)).build();
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Produces(MediaType.APPLICATION_JSON)
    public Response signOffFromPhone(@PathParam("visit") VisitId id, MultivaluedMap<String, String> form) {
        if (!viewer.id().toString().equals(form.getFirst("signer"))) {
            // Another user has signed in on the phone since the sheet was filled: it waits for its own signer.
            throw new WebRefusal.SignInFirst();
        }
        Fields fields = TakeSheet.fields(form, viewer.notation());
        String next = takeSheet.take(id, form, fields);
        if (next != null) {
            return Response.ok(new Sent(next)).build();
        }
        View view = viewer.view();
        Map<String, String> errors = fields.errors(page(id, fields).labels(view));
        return Response.status(fields.status())
                .entity(new NotSent(view.t("common.errors.heading"), errors))
                .build();
    }

    private SheetPage page(VisitId id, Fields fields) {
        TakeSheet.askForUnits(fields, viewer.view());
        return sheetPages.of(readVisits.visitFor(viewer.id(), id), fields);
    }
}
