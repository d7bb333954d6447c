package eaveside.web.invoices;

import eaveside.invoicing.Aging;
import eaveside.invoicing.ApplyCredit;
import eaveside.invoicing.BillVisit;
import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.Draft;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceInput;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssueInvoice;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.PreviewInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Refusal;
import eaveside.kernel.Slice;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Names;
import eaveside.web.forms.Created;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import eaveside.web.security.WebRefusal;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DELETE;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Optional;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Invoices for scripts. */
@Path("/api/invoices")
@Dependent
@Tag(name = "Invoices")
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicesApi extends JsonResource {
    private static final int PAGE = 50;

    @Inject
    PreviewInvoice previewInvoice;

    @Inject
    DraftInvoice draftInvoice;

    @Inject
    BillVisit billVisit;

    @Inject
    IssueInvoice issueInvoice;

    @Inject
    CreditInvoice creditInvoice;

    @Inject
    ApplyCredit applyCredit;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    Names names;

    /** A page of the list; ask for more with {@code after=next}. */
    public record Invoices(
            List<InvoiceSummary> invoices, @Nullable String next) {}

    /** The balances due of all customers together, and of each. */
    public record Agings(Aging all, List<ReadInvoices.CustomerAging> customers) {}

    @POST
    @Path("preview")
    @Operation(
            summary = "Computes an invoice's totals after EN 16931, in any currency; stores nothing",
            description = "A line's net is (gross price - discount) / base quantity x quantity + charges - allowances, "
                    + "rounded half up once; tax is computed on the sum of each category and rate.")
    public InvoiceTotals preview(InvoiceInput input) {
        return previewInvoice.preview(input);
    }

    @GET
    @Transactional
    @Operation(summary = "Lists issued invoices", description = "'q' finds customers or a number.")
    public Invoices list(
            @QueryParam("q") @DefaultValue("") String q,
            @QueryParam("show") @DefaultValue("ALL") ReadInvoices.Which show,
            @QueryParam("customer") @Nullable CustomerId customer,
            @QueryParam("after") @Nullable String after) {
        names.customer(customer); // an unknown one is not found
        Slice<InvoiceSummary> page = readInvoices.find(q, show, customer, after, PAGE);
        return new Invoices(page.rows(), page.next());
    }

    @GET
    @Path("aging")
    @Transactional
    @Operation(
            summary = "Balances due by how long they are past due: current, 1 to 30, 31 to 60, 61 to 90, over 90 days",
            description = "Of all customers together, and of each with a balance due, by name.")
    public Agings aging() {
        return new Agings(readInvoices.aging(), readInvoices.agingByCustomer());
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "Reads an invoice, or a draft (which has 'content' instead of a number)")
    @APIResponse(
            responseCode = "200",
            content = @Content(schema = @Schema(anyOf = {InvoiceDraft.class, IssuedInvoice.class})))
    public Response invoice(@PathParam("id") InvoiceId id) {
        Optional<InvoiceDraft> draft = readInvoices.draftIfThere(id);
        return Response.ok(draft.isPresent() ? draft.get() : readInvoices.invoice(id))
                .build();
    }

    @POST
    @Operation(summary = "Drafts an invoice; the same again is a retry")
    public Created<InvoiceDraft> draft(Draft draft) {
        return created(draftInvoice.save(draft, viewer.id()));
    }

    @POST
    @Path("from-visit/{visit}")
    @Operation(summary = "Drafts the invoice of a completed visit; the same again is a retry")
    public Created<InvoiceDraft> bill(BillVisit.Bill bill) {
        return created(billVisit.draft(bill));
    }

    private static Created<InvoiceDraft> created(InvoiceDraft draft) {
        return Created.at("/api/invoices/" + draft.id(), draft);
    }

    @PUT
    @Path("{id}")
    @Operation(summary = "Saves a draft as a whole, naming the version that was read; the same again is a retry")
    public InvoiceDraft edit(Draft draft) {
        return draftInvoice.save(draft, viewer.id());
    }

    @DELETE
    @Path("{id}")
    @Operation(summary = "Discards a draft, naming the version that was read; the same again is a retry")
    public void discard(@PathParam("id") InvoiceId id, @QueryParam("version") @DefaultValue("") String version) {
        if (!version.matches("[0-9]{1,9}")) {
            throw new WebRefusal.Within(
                    Refusal.Type.MALFORMED, "web.unreadable", "version", "{field} must be the version that was read");
        }
        draftInvoice.discard(id, Integer.parseInt(version), viewer.id());
    }

    @POST
    @Path("{id}/issue")
    @Operation(
            summary = "Issues a draft: it gets its number and posts; the same again is a retry",
            description =
                    "Where the customer has unapplied credit, 'credit' says whether it pays of the invoice at once"
                            + " (APPLY, as prepaid) or stays (KEEP); the issue is refused as long as nothing says so. The"
                            + " date is not before the last invoice's, nor before the posting date of the visit's job"
                            + " sheet.")
    public IssuedInvoice issue(IssueInvoice.Issue issue) {
        return issueInvoice.issue(issue);
    }

    @POST
    @Path("{original}/credit")
    @Operation(
            summary = "Credits an issued invoice in full by a credit memo of its own, once; the same again is a retry")
    public Created<Posted> credit(Reversal reversal) {
        return Created.document(creditInvoice.credit(reversal));
    }

    @POST
    @Path("{invoice}/apply")
    @Operation(summary = "Pays an invoice from the customer's unapplied credit; the same again is a retry")
    public Created<Posted> apply(ApplyCredit.Apply apply) {
        return Created.document(applyCredit.apply(apply));
    }

    @POST
    @Path("{invoice}/applications/{original}/reversal")
    @Operation(
            summary = "Unapplies credit, once: the amount is due again, and credit again; the same again is a retry",
            description = "'original' is the document that applied it, as the invoice's settlements name it.")
    public Created<Posted> unapply(@PathParam("invoice") InvoiceId invoice, Reversal reversal) {
        return Created.document(applyCredit.undo(invoice, reversal));
    }
}
