package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.invoicing.ApplyCredit;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Json;
import eaveside.web.security.For;
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
    private final ApplyCredit applyCredit;
    private final ReadInvoices readInvoices;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public CreditApi(ApplyCredit applyCredit, ReadInvoices readInvoices, Books books, Viewer viewer) {
        this.applyCredit = applyCredit;
        this.readInvoices = readInvoices;
        this.books = books;
        this.viewer = viewer;
    }

    @POST
    @Path("{id}/apply")
    @Operation(summary = "Pays an invoice from the customer's credit; the same again is a retry")
    public InvoiceAnswers.Document apply(@PathParam("id") String id, InvoiceBodies.@Nullable Apply body) {
        InvoiceBodies.Apply asked = Json.required("body", body);
        InvoiceId invoice = InvoiceId.of(id);
        InvoiceAnswers.Document answer = InvoiceAnswers.Document.of(applyCredit.apply(new ApplyCredit.Apply(
                DocumentId.of(Json.required("id", asked.id())),
                invoice,
                InvoiceReading.in(books.currency()).amount("amount", asked.amount()),
                Json.dateIfGiven("date", asked.date()),
                viewer.id())));
        return answer;
    }

    @POST
    @Path("{id}/unapply")
    @Operation(summary = "Takes a apply back, once: the amount is open again, and credit again")
    public InvoiceAnswers.Document unapply(@PathParam("id") String id, InvoiceBodies.@Nullable Unapply body) {
        InvoiceBodies.Unapply asked = Json.required("body", body);
        InvoiceId invoice = InvoiceId.of(id);
        DocumentId apply = DocumentId.of(Json.required("apply", asked.apply()));
        // The address names the invoice that the audit log will show: a match of another is not found under it.
        if (readInvoices.invoice(invoice).settlements().stream()
                .noneMatch(settlement -> settlement.document().equals(apply))) {
            throw new InvoiceRefusal.NoSuchApplication(apply.toString());
        }
        InvoiceAnswers.Document answer = InvoiceAnswers.Document.of(applyCredit.undo(new Reversal(
                DocumentId.of(Json.required("id", asked.id())),
                apply,
                Json.dateIfGiven("date", asked.date()),
                Json.required("reason", asked.reason()),
                viewer.id())));
        return answer;
    }
}
