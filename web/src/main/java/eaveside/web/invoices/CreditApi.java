package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.MatchCredit;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Trail;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Letting a customer's credit pay an invoice, and taking that back, for scripts. */
@Path("/api/invoices")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Invoices")
@For({Role.OWNER, Role.OFFICE})
public class CreditApi {
    private final MatchCredit matchCredit;
    private final ReadInvoices readInvoices;
    private final Books books;
    private final Viewer viewer;
    private final Trail trail;

    @Inject
    public CreditApi(MatchCredit matchCredit, ReadInvoices readInvoices, Books books, Viewer viewer, Trail trail) {
        this.matchCredit = matchCredit;
        this.readInvoices = readInvoices;
        this.books = books;
        this.viewer = viewer;
        this.trail = trail;
    }

    @POST
    @Path("{id}/match")
    @Operation(summary = "Pays an invoice from the customer's credit; the same again is a retry")
    public InvoiceAnswers.Document match(@PathParam("id") String id, InvoiceBodies.@Nullable Match body) {
        InvoiceBodies.Match asked = Json.required("body", body);
        InvoiceId invoice = InvoiceId.of(id);
        InvoiceAnswers.Document answer = InvoiceAnswers.Document.of(matchCredit.match(new MatchCredit.Match(
                DocumentId.of(Json.required("id", asked.id())),
                invoice,
                InvoiceReading.in(books.currency()).amount("amount", asked.amount()),
                Json.date("date", asked.date(), books.today()),
                viewer.id())));
        trail.done("credit.match", invoice);
        return answer;
    }

    @POST
    @Path("{id}/unmatch")
    @Operation(summary = "Takes a match back, once: the amount is open again, and credit again")
    public InvoiceAnswers.Document unmatch(@PathParam("id") String id, InvoiceBodies.@Nullable Unmatch body) {
        InvoiceBodies.Unmatch asked = Json.required("body", body);
        InvoiceId invoice = InvoiceId.of(id);
        DocumentId match = DocumentId.of(Json.required("match", asked.match()));
        // The address names the invoice that the trail will show: a match of another is not found under it.
        if (readInvoices.invoice(invoice).settlements().stream()
                .noneMatch(settlement -> settlement.document().equals(match))) {
            throw new InvoiceRefusal.NoSuchMatch(match.toString());
        }
        InvoiceAnswers.Document answer = InvoiceAnswers.Document.of(matchCredit.undo(new Reversal(
                DocumentId.of(Json.required("id", asked.id())),
                match,
                Json.date("date", asked.date(), books.today()),
                Json.required("reason", asked.reason()),
                viewer.id())));
        trail.done("credit.unmatch", invoice);
        return answer;
    }
}
