package eaveside.web.invoices;

import eaveside.invoicing.BillVisit;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.QuoteId;
import eaveside.kernel.VisitId;
import eaveside.ledger.DocumentType;
import eaveside.ledger.ReadLedger;
import eaveside.visits.ReadVisits;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** One invoice, as a draft or as it was issued; drafting the invoice of a visit, and discarding a draft. */
@Path("/invoices")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicePages extends PageResource {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadLedger readLedger;

    @Inject
    BillVisit billVisit;

    @Inject
    DraftInvoice draftInvoice;

    @Inject
    Names names;

    /**
     * A draft to look over before it is issued.
     *
     * @param  credit the customer's unapplied credit
     */
    public record DraftPage(
            InvoiceDraft draft,
            String customerName,
            @Nullable QuoteId quote,
            Names names,
            Money credit,
            Fields fields) implements Page {}

    /**
     * An issued invoice.
     *
     * @param  credit   the customer's unapplied credit
     * @param  undoable applied credit that has not been unapplied
     */
    public record IssuedPage(
            IssuedInvoice invoice,
            @Nullable QuoteId quote,
            Names names,
            Money credit,
            Set<DocumentId> undoable,
            Fields fields)
            implements Page {}

    @GET
    @Path("{id}")
    @Transactional
    public Page invoice(@PathParam("id") InvoiceId id) {
        Optional<InvoiceDraft> draft = readInvoices.draftIfThere(id);
        return draft.isPresent()
                ? draftPage(draft.get(), Fields.empty())
                : issuedPage(readInvoices.invoice(id), Fields.empty());
    }

    private DraftPage draftPage(InvoiceDraft draft, Fields fields) {
        return new DraftPage(
                draft,
                names.customer(draft.customer()),
                quoteOf(draft.visit()),
                names,
                readPayments.credit(draft.customer()),
                fields);
    }

    IssuedPage issuedPage(IssuedInvoice invoice, Fields fields) {
        return new IssuedPage(
                invoice,
                quoteOf(invoice.visit()),
                names,
                readPayments.credit(invoice.customer()),
                // What a credit memo has freed is not unapplied once more.
                invoice.creditMemo() == null ? undoable(invoice) : Set.of(),
                fields);
    }

    private Set<DocumentId> undoable(IssuedInvoice invoice) {
        List<DocumentId> applications = invoice.settlements().stream()
                .filter(s -> s.type() == DocumentType.CREDIT_APPLICATION
                        && s.amount().isPositive())
                .map(IssuedInvoice.Settlement::document)
                .toList();
        return readLedger.heads(applications).stream()
                .filter(head -> head.reversedBy() == null)
                .map(head -> head.posted().id())
                .collect(Collectors.toSet());
    }

    private @Nullable QuoteId quoteOf(@Nullable VisitId visit) {
        return visit == null ? null : readVisits.visit(visit).quote();
    }

    /** Drafts what the visit has to bill, or shows the draft that there is. */
    @POST
    @Path("from-visit/{visit}")
    public Response fromVisit(@PathParam("visit") VisitId visit, Fields fields) {
        InvoiceId draft = readInvoices.draftOf(visit).orElseGet(() -> {
            BillVisit.Bill bill = new BillVisit.Bill(new InvoiceId(fields.id("id")), visit, viewer.id());
            return billVisit.draft(bill).id();
        });
        return Response.seeOther(URI.create("/invoices/" + draft)).build();
    }

    @POST
    @Path("{id}/discard")
    public Response discard(@PathParam("id") InvoiceId id, Fields fields) {
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        return fields.run(() -> draftInvoice.discard(id, version, viewer.id()))
                ? Respond.to("/invoices?show=DRAFTS", "invoices.discarded")
                : Respond.again(fields, draftPage(readInvoices.draft(id), fields));
    }
}
