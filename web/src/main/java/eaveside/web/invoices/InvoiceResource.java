package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.BillVisit;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.EditDraft;
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
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** One invoice, as a draft or as it was issued; drafting the invoice of a visit, and discarding a draft. */
@Path("/invoices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class InvoiceResource {
    private final ReadInvoices readInvoices;
    private final ReadPayments readPayments;
    private final ReadCustomer readCustomer;
    private final ReadVisits readVisits;
    private final ReadLedger readLedger;
    private final BillVisit billVisit;
    private final EditDraft editDraft;
    private final Names names;
    private final Viewer viewer;

    @Inject
    public InvoiceResource(
            ReadInvoices readInvoices,
            ReadPayments readPayments,
            ReadCustomer readCustomer,
            ReadVisits readVisits,
            ReadLedger readLedger,
            BillVisit billVisit,
            EditDraft editDraft,
            Names names,
            Viewer viewer) {
        this.readInvoices = readInvoices;
        this.readPayments = readPayments;
        this.readCustomer = readCustomer;
        this.readVisits = readVisits;
        this.readLedger = readLedger;
        this.billVisit = billVisit;
        this.editDraft = editDraft;
        this.names = names;
        this.viewer = viewer;
    }

    /**
     * A draft to look over before it is issued.
     *
     * @param  credit that the customer has unapplied
     */
    public record DraftPage(
            InvoiceDraft draft, Customer customer, @Nullable QuoteId quote, Names names, Money credit, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/draft.jte";
        }

        public boolean isGiven(DraftLine line) {
            LineOrigin origin = draft.origins().get(line.id());
            return origin != null && origin.noCharge();
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
     * @param  credit       that the customer has to the good
     * @param  undoable     matches of credit that have not been taken back
     * @param  applicationUndoing the id of the document that would take one back
     */
    public record IssuedPage(
            IssuedInvoice invoice,
            @Nullable QuoteId quote,
            Names names,
            Money credit,
            Set<DocumentId> undoable,
            DocumentId applicationUndoing,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/issued.jte";
        }

        public boolean isGiven(IssuedInvoice.Line line) {
            LineOrigin origin = line.origin();
            return origin != null && origin.noCharge();
        }
    }

    @GET
    @Path("{id}")
    @Transactional
    public Page invoice(@PathParam("id") String id) {
        InvoiceId invoice = InvoiceId.of(id);
        Optional<InvoiceDraft> draft = readInvoices.draftIfThere(invoice);
        return draft.isPresent()
                ? draftPage(draft.get(), Fields.empty())
                : issuedPage(readInvoices.invoice(invoice), Fields.empty());
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
    public Response fromVisit(@PathParam("visit") String visit, MultivaluedMap<String, String> form) {
        VisitId id = VisitId.of(visit);
        Optional<InvoiceId> before = readInvoices.draftOf(id);
        InvoiceId draft = before.isPresent()
                ? before.get()
                : billVisit
                        .draft(new BillVisit.Bill(
                                new InvoiceId(viewer.fields(form).id("id")), id, viewer.id()))
                        .id();
        return Response.seeOther(URI.create("/invoices/" + draft)).build();
    }

    @POST
    @Path("{id}/discard")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response discard(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        InvoiceId draft = InvoiceId.of(id);
        Fields fields = viewer.fields(form);
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        return fields.run(() -> editDraft.discard(draft, version))
                ? Response.seeOther(URI.create("/invoices?show=drafts&done=invoices.discarded"))
                        .build()
                : Response.status(fields.status())
                        .entity(draftPage(readInvoices.draft(draft), fields))
                        .build();
    }
}
