package eaveside.web.sheets;

import eaveside.access.Role;
import eaveside.access.User;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.PhotoId;
import eaveside.kernel.Refusal;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.visits.JobSheet;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.SignOffVisit;
import eaveside.visits.Visit;
import eaveside.visits.VisitRefusal;
import eaveside.visits.VisitStatus;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.AuditLog;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.security.WebRefusal;
import eaveside.web.visits.SheetFacts;
import eaveside.web.visits.SheetFacts.Facts;
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
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A visit's sheet on the phone. It is sent as a plain form; the page's script sends the same form and asks for JSON back,
 * so that it can keep the sheet until it has gone through.
 */
@Path("/sheets/{visit: [0-9a-fA-F-]{36}}")
@Dependent
@For({Role.OWNER, Role.OFFICE, Role.TECHNICIAN})
public class SheetResource {
    private final ReadVisits readVisits;
    private final ReadSheets readSheets;
    private final ReadCustomer readCustomer;
    private final SignOffVisit signOffVisit;
    private final SentForms sentForms;
    private final SheetPages sheetPages;
    private final SheetFacts sheetFacts;
    private final Books books;
    private final Viewer viewer;
    private final AuditLog auditLog;

    @Inject
    public SheetResource(
            ReadVisits readVisits,
            ReadSheets readSheets,
            ReadCustomer readCustomer,
            SignOffVisit signOffVisit,
            SentForms sentForms,
            SheetPages sheetPages,
            SheetFacts sheetFacts,
            Books books,
            Viewer viewer,
            AuditLog auditLog) {
        this.readVisits = readVisits;
        this.readSheets = readSheets;
        this.readCustomer = readCustomer;
        this.signOffVisit = signOffVisit;
        this.sentForms = sentForms;
        this.sheetPages = sheetPages;
        this.sheetFacts = sheetFacts;
        this.books = books;
        this.viewer = viewer;
        this.auditLog = auditLog;
    }

    /** A sheet that is signed off; the photos are those that no finding shows. */
    public record SignedPage(Visit visit, String customer, Site site, Facts facts, List<PhotoId> photos, String signer)
            implements Page {
        @Override
        public String template() {
            return "sheets/signed.jte";
        }
    }

    /** A visit that will not take place. */
    public record CanceledPage(Visit visit, String customer, String signer) implements Page {
        @Override
        public String template() {
            return "sheets/canceled.jte";
        }
    }

    /** Where the phone goes on. */
    public record Sent(String location) {}

    /** Why the phone's sheet did not go through: by field, empty for the sheet as a whole. */
    public record NotSent(String title, Map<String, String> errors) {}

    @GET
    @Produces(MediaType.TEXT_HTML)
    @Transactional
    public Page sheet(@PathParam("visit") String id, @QueryParam("location") @DefaultValue("") String location) {
        Visit visit = own(id);
        if (visit.status() == VisitStatus.CANCELED) {
            return new CanceledPage(
                    visit,
                    readCustomer.customer(visit.customer()).name(),
                    viewer.id().toString());
        }
        if (visit.sheet() != null) {
            Facts facts = sheetFacts.of(visit, readSheets.sheet(visit.sheet()));
            return new SignedPage(
                    visit,
                    readCustomer.customer(visit.customer()).name(),
                    readCustomer.site(visit.site()),
                    facts,
                    sheetFacts.otherPhotos(visit.id(), facts),
                    viewer.id().toString());
        }
        User signer = signer();
        return sheetPages.of(visit, signer, sheetPages.blank(visit, signer, location, books.today()), viewer.view());
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Produces(MediaType.TEXT_HTML)
    public Response signOff(@PathParam("visit") String id, MultivaluedMap<String, String> form) {
        if (form.containsKey(Rows.MORE)) {
            return Response.ok(page(own(id), viewer.fields(Rows.withAnother(form))))
                    .build();
        }
        Fields fields = viewer.fields(form);
        String next = take(VisitId.of(id), form, fields);
        return next == null
                ? Response.status(fields.status()).entity(page(own(id), fields)).build()
                : Response.seeOther(URI.create(next)).build();
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    @Produces(MediaType.APPLICATION_JSON)
    public Response signOffFromPhone(@PathParam("visit") String id, MultivaluedMap<String, String> form) {
        if (!viewer.id().toString().equals(form.getFirst("signer"))) {
            // Somebody else has signed in on the phone since the sheet was filled: it waits for its own signer.
            throw new WebRefusal.SignInFirst();
        }
        Fields fields = viewer.fields(form);
        String next = take(VisitId.of(id), form, fields);
        return next == null
                ? Response.status(fields.status())
                        .entity(new NotSent(viewer.view().t("common.errors.heading"), fields.errors()))
                        .build()
                : Response.ok(new Sent(next)).build();
    }

    /**
     * Takes a sheet that was sent, and nothing of it is lost: it signs the visit off, or is kept for the office to read.
     *
     * @return where its sender goes on; null where the sender has to correct what is noted at the fields
     */
    private @Nullable String take(VisitId id, MultivaluedMap<String, String> form, Fields fields) {
        try {
            Visit visit = readVisits.visitFor(viewer.id(), id);
            JobSheet sheet = SheetForm.read(
                    fields, visit, sheetPages.known(visit, viewer.view().us()), viewer.id());
            if (sheet != null) {
                signOffVisit.signOff(sheet);
                return "/sheets/" + id + "?done=sheets.signed";
            }
            if (visit.status() != VisitStatus.SCHEDULED) {
                throw new VisitRefusal.WrongStatus(visit.status(), VisitStatus.SCHEDULED);
            }
        } catch (VisitRefusal.WrongStatus late) {
            return recorded(id, form, late, "/sheets/" + id);
        } catch (VisitRefusal.NotYours meanwhile) {
            return recorded(id, form, meanwhile, "/sheets");
        } catch (Refusal refusal) {
            if (refusal.type() != Refusal.Type.RULE && refusal.type() != Refusal.Type.CONFLICT) {
                sentForms.keep(id, viewer.id(), form, refusal.text());
                throw refusal;
            }
            fields.refused(refusal);
        }
        Sections.settle(fields, viewer.view());
        sentForms.keep(
                id,
                viewer.id(),
                form,
                fields.errors().values().stream().distinct().collect(Collectors.joining(". ")));
        return null;
    }

    /** There is nothing left that its sender could correct: another of the crew was first, or the plan has changed. */
    private String recorded(VisitId id, MultivaluedMap<String, String> form, Refusal why, String next) {
        sentForms.keep(id, viewer.id(), form, why.text());
        auditLog.done("visit.sheet-recorded", id);
        return next + "?done=sheets.recorded";
    }

    private SheetPage page(Visit visit, Fields fields) {
        View view = viewer.view();
        return sheetPages.of(visit, signer(), fields, view);
    }

    private Visit own(String id) {
        return readVisits.visitFor(viewer.id(), VisitId.of(id));
    }

    private User signer() {
        User user = viewer.user();
        if (user == null) {
            throw new WebRefusal.SignInFirst();
        }
        return user;
    }
}
