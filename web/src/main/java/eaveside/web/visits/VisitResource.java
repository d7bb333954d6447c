package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.findings.FindingView;
import eaveside.findings.ReadFindings;
import eaveside.kernel.DifferenceId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.CancelVisit;
import eaveside.visits.CloseUnbilled;
import eaveside.visits.DecideDifference;
import eaveside.visits.Difference;
import eaveside.visits.DifferenceDecision;
import eaveside.visits.MoveVisit;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.SignedSheet;
import eaveside.visits.Visit;
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
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** One visit: its plan, its signed sheet, and what is still to be decided. */
@Path("/visits/{id}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class VisitResource {
    private final ReadVisits readVisits;
    private final ReadSheets readSheets;
    private final ReadFindings readFindings;
    private final ReadCustomer readCustomer;
    private final ReadUsers readUsers;
    private final VisitActions actions;
    private final Books books;
    private final Viewer viewer;
    private final Names names;

    @Inject
    public VisitResource(
            ReadVisits readVisits,
            ReadSheets readSheets,
            ReadFindings readFindings,
            ReadCustomer readCustomer,
            ReadUsers readUsers,
            VisitActions actions,
            Books books,
            Viewer viewer,
            Names names) {
        this.readVisits = readVisits;
        this.readSheets = readSheets;
        this.readFindings = readFindings;
        this.readCustomer = readCustomer;
        this.readUsers = readUsers;
        this.actions = actions;
        this.books = books;
        this.viewer = viewer;
        this.names = names;
    }

    /** @param sheets that were signed, the one in force last */
    public record VisitPage(
            Visit visit,
            Site site,
            List<SignedSheet> sheets,
            List<FindingView> findings,
            List<User> technicians,
            Names names,
            DocumentId documentId,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "visits/visit.jte";
        }

        public boolean isBillable() {
            return sheets.stream()
                    .filter(s -> s.reversedBy() == null)
                    .flatMap(s -> s.differences().stream())
                    .allMatch(d -> d.decision().isSettled());
        }

        /** What a difference is about: the planned line's work, or the extra's. */
        public String lineName(Difference difference, View view) {
            for (Visit.Line line : visit.lines()) {
                if (line.id().equals(difference.line())) {
                    return names.offering(line.offering());
                }
            }
            return sheets.stream()
                    .flatMap(s -> s.extras().stream())
                    .filter(e -> e.id().equals(difference.line()))
                    .map(e -> view.t("visits.agreed-by", names.offering(e.offering()), e.agreedBy()))
                    .findFirst()
                    .orElse("");
        }

        public List<DifferenceDecision> choices(Difference difference) {
            return List.of(DifferenceDecision.values()).stream()
                    .filter(d -> d != DifferenceDecision.OPEN && d.suits(difference.kind()))
                    .toList();
        }
    }

    @GET
    @Transactional
    public VisitPage visit(@PathParam("id") String id) {
        VisitId visit = VisitId.of(id);
        return page(
                visit,
                Fields.showing(
                        Map.of("to", readVisits.visit(visit).date().plusDays(1).toString())));
    }

    private VisitPage page(VisitId id, Fields fields) {
        Visit visit = readVisits.visit(id);
        return new VisitPage(
                visit,
                readCustomer.site(visit.site()),
                readSheets.ofVisit(id),
                readFindings.ofVisit(id),
                readUsers.technicians(),
                names,
                DocumentId.next(),
                fields);
    }

    @POST
    @Path("move")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response move(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        VisitId visit = VisitId.of(id);
        Fields fields = Fields.of(form);
        LocalDate to = fields.date("to", books.today());
        String reason = fields.text("reason");
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        List<UserId> crew = fields.all("crew").stream().map(UserId::of).toList();
        return done(
                visit,
                fields,
                "visits.moved",
                () -> actions.move(new MoveVisit.Move(
                        visit,
                        version,
                        to,
                        crew.isEmpty() ? readVisits.visit(visit).crew() : crew,
                        reason,
                        viewer.id())));
    }

    @POST
    @Path("cancel")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response cancel(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        VisitId visit = VisitId.of(id);
        Fields fields = Fields.of(form);
        String reason = fields.text("cancelReason");
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        return done(
                visit,
                fields,
                "visits.cancelled",
                () -> actions.cancel(new CancelVisit.Cancellation(visit, version, reason, viewer.id())));
    }

    @POST
    @Path("decide")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response decide(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        VisitId visit = VisitId.of(id);
        Fields fields = Fields.of(form);
        DifferenceDecision decision = fields.choice("decision", DifferenceDecision.class);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        DifferenceId difference = DifferenceId.of(fields.text("difference"));
        return done(
                visit,
                fields,
                "visits.decided",
                () -> actions.decide(new DecideDifference.Decision(
                        difference,
                        version,
                        decision == null ? DifferenceDecision.OPEN : decision,
                        fields.optional("note"),
                        viewer.id())));
    }

    @POST
    @Path("close-unbilled")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response closeUnbilled(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        VisitId visit = VisitId.of(id);
        Fields fields = Fields.of(form);
        String reason = fields.text("closeReason");
        DocumentId document = new DocumentId(fields.id("id"));
        return done(
                visit,
                fields,
                "visits.closed",
                () -> actions.closeUnbilled(
                        new CloseUnbilled.Closing(document, visit, books.today(), reason, viewer.id())));
    }

    @POST
    @Path("reverse-sheet")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response reverseSheet(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        VisitId visit = VisitId.of(id);
        Fields fields = Fields.of(form);
        String reason = fields.text("reverseReason");
        DocumentId document = new DocumentId(fields.id("id"));
        DocumentId sheet = DocumentId.of(fields.text("sheet"));
        return done(
                visit,
                fields,
                "visits.reversed",
                () -> actions.reverseSheet(new Reversal(document, sheet, books.today(), reason, viewer.id())));
    }

    private Response done(VisitId visit, Fields fields, String message, Runnable action) {
        return fields.run(action)
                ? Response.seeOther(URI.create("/visits/" + visit + "?done=" + message))
                        .build()
                : Response.status(fields.status()).entity(page(visit, fields)).build();
    }
}
