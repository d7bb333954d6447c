package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.catalog.Catalog;
import eaveside.invoicing.BillVisit;
import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.CreditOnHand;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.EditDraft;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.IssueInvoice;
import eaveside.invoicing.PreviewInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Json;
import eaveside.web.security.For;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Invoices for scripts. */
@Path("/api/invoices")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Invoices")
@For({Role.OWNER, Role.OFFICE})
public class InvoicesApi {
    private static final int PAGE = 50;

    private final PreviewInvoice previewInvoice;
    private final DraftInvoice draftInvoice;
    private final BillVisit billVisit;
    private final EditDraft editDraft;
    private final IssueInvoice issueInvoice;
    private final CreditInvoice creditInvoice;
    private final ReadInvoices readInvoices;
    private final Catalog catalog;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public InvoicesApi(
            PreviewInvoice previewInvoice,
            DraftInvoice draftInvoice,
            BillVisit billVisit,
            EditDraft editDraft,
            IssueInvoice issueInvoice,
            CreditInvoice creditInvoice,
            ReadInvoices readInvoices,
            Catalog catalog,
            Books books,
            Viewer viewer) {
        this.previewInvoice = previewInvoice;
        this.draftInvoice = draftInvoice;
        this.billVisit = billVisit;
        this.editDraft = editDraft;
        this.issueInvoice = issueInvoice;
        this.creditInvoice = creditInvoice;
        this.readInvoices = readInvoices;
        this.catalog = catalog;
        this.books = books;
        this.viewer = viewer;
    }

    @POST
    @Untold("it works out and changes nothing")
    @Path("preview")
    @Operation(
            summary = "Computes an invoice's totals after EN 16931, in any currency; stores nothing",
            description = "Decimals may be sent as numbers or texts and are answered as texts. A line's net is "
                    + "(price - discount) / baseQuantity x quantity + charges - allowances, rounded half up once; "
                    + "tax is computed on the sum of each category and rate.")
    public InvoiceAnswers.Totals preview(InvoiceBodies.@Nullable Preview body) {
        return InvoiceAnswers.Totals.of(previewInvoice.preview(InvoiceReading.preview(body)));
    }

    @GET
    @Transactional
    @Operation(
            summary = "Lists issued invoices: all, found by customer or number, outstanding, overdue, or a customer's")
    public InvoiceAnswers.Invoices list(
            @QueryParam("q") @DefaultValue("") String q,
            @QueryParam("show") @DefaultValue("") String show,
            @QueryParam("customer") @Nullable String customer,
            @QueryParam("after") @Nullable String after) {
        Show which = Show.of(show);
        if (customer != null) {
            return InvoiceAnswers.Invoices.of(
                    books.today(), readInvoices.ofCustomer(CustomerId.of(customer), after, PAGE));
        }
        if (!q.isBlank()) {
            return InvoiceAnswers.Invoices.of(books.today(), readInvoices.find(q, which.which(), after, PAGE));
        }
        return InvoiceAnswers.Invoices.of(
                books.today(),
                switch (which) {
                    case OUTSTANDING -> readInvoices.outstanding(after, PAGE);
                    case OVERDUE -> readInvoices.overdue(after, PAGE);
                    default -> readInvoices.find("", after, PAGE);
                });
    }

    @GET
    @Path("aging")
    @Transactional
    @Operation(
            summary = "Balances due by how long they are past due: current, 1 to 30, 31 to 60, 61 to 90, over 90 days",
            description = "Of all customers together, and of each with a balance due, by name.")
    public InvoiceAnswers.Aging aging() {
        return InvoiceAnswers.Aging.of(readInvoices.aging(), readInvoices.agingByCustomer());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "Reads an invoice, or a draft (which has a version instead of a number)")
    public Response invoice(@PathParam("id") String id) {
        InvoiceId invoice = InvoiceId.of(id);
        Optional<InvoiceDraft> draft = readInvoices.draftIfThere(invoice);
        Object answer = draft.isPresent()
                ? InvoiceAnswers.Draft.of(draft.get())
                : InvoiceAnswers.Invoice.of(readInvoices.invoice(invoice));
        return Response.ok(answer).build();
    }

    @POST
    @Operation(summary = "Drafts an invoice, freely for a customer or of a done visit; the same again is a retry")
    public Response draft(InvoiceBodies.@Nullable NewDraft body) {
        InvoiceBodies.NewDraft asked = Json.required("body", body);
        InvoiceId id = InvoiceId.of(Json.required("id", asked.id()));
        String visit = asked.visit();
        InvoiceDraft draft = visit != null
                ? billVisit.draft(new BillVisit.Bill(id, VisitId.of(visit), viewer.id()))
                : draftInvoice.draft(new DraftInvoice.NewDraft(
                        id,
                        CustomerId.of(Json.required("customer", asked.customer())),
                        InvoiceReading.in(books.currency(), catalog::serviceItem)
                                .content(asked.content()),
                        viewer.id()));
        return Response.created(URI.create("/api/invoices/" + id))
                .entity(InvoiceAnswers.Draft.of(draft))
                .build();
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Writes a draft anew; names the version that was read")
    public InvoiceAnswers.Draft edit(@PathParam("id") String id, InvoiceBodies.@Nullable Edit body) {
        InvoiceBodies.Edit edit = Json.required("body", body);
        return InvoiceAnswers.Draft.of(editDraft.edit(new EditDraft.Edit(
                InvoiceId.of(id),
                Json.required("version", edit.version()),
                InvoiceReading.in(books.currency(), catalog::serviceItem).content(edit.content()))));
    }

    @DELETE
    @Path("{id}")
    @Operation(summary = "Discards a draft; names the version that was read")
    public Response discard(@PathParam("id") String id, @QueryParam("version") @Nullable Integer version) {
        editDraft.discard(InvoiceId.of(id), Json.required("version", version));
        return Response.noContent().build();
    }

    @POST
    @Path("{id}/issue")
    @Operation(
            summary = "Issues a draft: it gets its number and posts; the same again is a retry",
            description =
                    "Where the customer has unapplied credit, applyCredit says whether it pays of the invoice at once "
                            + "(as prepaid), and the issue is refused as long as nothing says so. The date is not before the last "
                            + "invoice's, nor before the posting date of the visit's sheet.")
    public InvoiceAnswers.Invoice issue(@PathParam("id") String id, InvoiceBodies.@Nullable Issue body) {
        InvoiceBodies.Issue issue = Json.required("body", body);
        InvoiceId invoice = InvoiceId.of(id);
        InvoiceAnswers.Invoice answer = InvoiceAnswers.Invoice.of(issueInvoice.issue(new IssueInvoice.Issue(
                invoice,
                Json.required("version", issue.version()),
                Json.dateIfGiven("date", issue.date()),
                credit(issue.applyCredit()),
                viewer.id())));
        return answer;
    }

    private static CreditOnHand credit(@Nullable Boolean apply) {
        return apply == null ? CreditOnHand.ASK : apply ? CreditOnHand.APPLY : CreditOnHand.KEEP;
    }

    @POST
    @Path("{id}/credit")
    @Operation(summary = "Credits an issued invoice in full by a credit memo of its own, once")
    public InvoiceAnswers.Document credit(@PathParam("id") String id, InvoiceBodies.@Nullable Reverse body) {
        InvoiceBodies.Reverse credit = Json.required("body", body);
        InvoiceId invoice = InvoiceId.of(id);
        InvoiceAnswers.Document answer = InvoiceAnswers.Document.of(creditInvoice.credit(new Reversal(
                DocumentId.of(Json.required("id", credit.id())),
                new DocumentId(invoice.value()),
                Json.dateIfGiven("date", credit.date()),
                Json.required("reason", credit.reason()),
                viewer.id())));
        return answer;
    }
}
