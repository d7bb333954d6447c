package eaveside.web.invoices;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.BillVisit;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.LineOrigin;
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
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
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
import java.net.URI;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** One invoice, as a draft or as it was issued; drafting the invoice of a visit, and discarding a draft. */
@Path("/invoices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicePages {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadCustomer readCustomer;

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

    @Inject
    Viewer viewer;

    /**
     * A draft to look over before it is issued.
     *
     * @param  credit the customer's unapplied credit
     */
    public record DraftPage(
            InvoiceDraft draft, Customer customer, @Nullable QuoteId quote, Names names, Money credit, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/draft.jte";
        }

        /** How the price of a line that bills a visit came about; null for a freely written one. */
        public @Nullable String reason(DraftLine line) {
            LineOrigin origin = draft.origins().get(line.id());
            return origin == null ? null : origin.priceReason();
        }
    }

    /**
     * An issued invoice.
     *
     * @param  credit       the customer's unapplied credit
     * @param  undoable     applied credit that has not been unapplied
     * @param  unapplying   the id of the document that would unapply one
     */
    public record IssuedPage(
            IssuedInvoice invoice,
            @Nullable QuoteId quote,
            Names names,
            Money credit,
            Set<DocumentId> undoable,
            DocumentId unapplying,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/issued.jte";
        }

        public boolean isNoCharge(IssuedInvoice.Line line) {
            LineOrigin origin = line.origin();
            return origin != null && origin.noCharge();
        }
    }

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
                readCustomer.customer(draft.customer()),
                quoteOf(draft.visit()),
                names,
                readPayments.credit(draft.customer()),
                fields);
    }

    IssuedPage issuedPage(IssuedInvoice invoice, Fields fields) {
        List<DocumentId> matches = invoice.settlements().stream()
                .filter(s -> s.type() == DocumentType.CREDIT_APPLICATION
                        && s.amount().isPositive())
                .map(IssuedInvoice.Settlement::document)
                .toList();
        Set<DocumentId> undoable = invoice.creditMemo() != null || matches.isEmpty()
                ? Set.of()
                : readLedger.heads(matches).stream()
                        .filter(head -> head.reversedBy() == null)
                        .map(head -> head.posted().id())
                        .collect(Collectors.toSet());
        return new IssuedPage(
                invoice,
                quoteOf(invoice.visit()),
                names,
                readPayments.credit(invoice.customer()),
                undoable,
                DocumentId.next(),
                fields);
    }

    private @Nullable QuoteId quoteOf(@Nullable VisitId visit) {
        return visit == null ? null : readVisits.visit(visit).quote();
    }

    /** Drafts what the visit has to bill, or shows the draft that there is. */
    @POST
    @Path("from-visit/{visit}")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response fromVisit(@PathParam("visit") VisitId visit, Fields fields) {
        Optional<InvoiceId> before = readInvoices.draftOf(visit);
        InvoiceId draft = before.isPresent()
                ? before.get()
                : billVisit
                        .draft(new BillVisit.Bill(new InvoiceId(fields.id("id")), visit, viewer.id()))
                        .id();
        return Response.seeOther(URI.create("/invoices/" + draft)).build();
    }

    @POST
    @Path("{id}/discard")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response discard(@PathParam("id") InvoiceId id, Fields fields) {
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        return fields.run(() -> draftInvoice.discard(id, version, viewer.id()))
                ? Response.seeOther(URI.create("/invoices?show=DRAFTS&done=invoices.discarded"))
                        .build()
                : Respond.again(fields, draftPage(readInvoices.draft(id), fields));
    }
}
