package eaveside.web.invoices;

import eaveside.invoicing.ApplyCredit;
import eaveside.invoicing.BillVisit;
import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.CreditOnHand;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssueInvoice;
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
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.SentSheet;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.Texts;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
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
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * One invoice, as a draft or as it was issued, and what is done with it: drafting that of a visit, discarding a draft; and
 * what posts, issuing, crediting in full and applying credit, each with a page that says what will happen first.
 */
@Path("/invoices")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoicePages extends PageResource {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadSentSheets readSentSheets;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadLedger readLedger;

    @Inject
    BillVisit billVisit;

    @Inject
    DraftInvoice draftInvoice;

    @Inject
    IssueInvoice issueInvoice;

    @Inject
    CreditInvoice creditInvoice;

    @Inject
    ApplyCredit applyCredit;

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
            List<SentSheet> unread,
            Fields fields)
            implements Page {}

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

    /**
     * Before a draft is issued.
     *
     * @param  credit unapplied credit beside what the draft takes, as far as the invoice could take it
     * @param  onHand all of that credit
     */
    public record IssuePage(
            InvoiceDraft draft,
            String customerName,
            Money credit,
            Money onHand,
            List<SentSheet> unread,
            Form<IssueInvoice.Issue> form)
            implements Page {}

    /** Before an invoice is credited in full. */
    public record CreditPage(IssuedInvoice invoice, Form<Reversal> form) implements Page {}

    /** Before the customer's credit pays an invoice. */
    public record ApplyPage(IssuedInvoice invoice, Money credit, Form<ApplyCredit.Apply> form) implements Page {}

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
        names.lookUpLines();
        return new DraftPage(
                draft,
                names.customer(draft.customer()),
                quoteOf(draft.visit()),
                names,
                readPayments.credit(draft.customer()),
                unread(draft.visit()),
                fields);
    }

    /** What was sent as the visit's sheet and nobody has read: it may say what else there is to bill. */
    private List<SentSheet> unread(@Nullable VisitId visit) {
        return visit == null
                ? List.of()
                : readSentSheets.ofVisit(visit).stream()
                        .filter(SentSheet::isUnread)
                        .toList();
    }

    private IssuedPage issuedPage(IssuedInvoice invoice, Fields fields) {
        names.lookUpLines();
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
        return visit == null ? null : readVisits.quoteOf(visit);
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

    @GET
    @Path("{id}/issue")
    @Transactional
    public Response askToIssue(@PathParam("id") InvoiceId id) {
        return readInvoices.draftIfThere(id).isEmpty()
                ? Respond.instead("/invoices/" + id) // issued by now, it may be, and come back to
                : Response.ok(issuePage(id, viewer.dated(IssueInvoice.Issue.class, Map.of())))
                        .build();
    }

    private IssuePage issuePage(InvoiceId id, Form<IssueInvoice.Issue> form) {
        InvoiceDraft draft = readInvoices.draft(id);
        InvoiceTotals totals = draft.totals();
        Money onHand = readPayments.credit(draft.customer()).minus(totals.prepaid());
        Money most = least(onHand, totals.due());
        return new IssuePage(
                draft,
                names.customer(draft.customer()),
                most.isPositive() ? most : Money.zero(most.currency()),
                onHand,
                unread(draft.visit()),
                form.labeled("invoices"));
    }

    private static Money least(Money one, Money other) {
        return one.compareTo(other) < 0 ? one : other;
    }

    @POST
    @Path("{id}/issue")
    public Response issue(@PathParam("id") InvoiceId id, Form<IssueInvoice.Issue> form) {
        Fields fields = form.fields();
        // A page that showed no credit has asked nobody, and its box, where it is shown now, is ticked.
        boolean asked = fields.ticked("creditShown");
        form.given(
                "credit",
                !asked ? CreditOnHand.ASK : fields.ticked("applyCredit") ? CreditOnHand.APPLY : CreditOnHand.KEEP);
        if (form.run(issueInvoice::issue)) {
            return done(id, "invoices.issued");
        }
        fields.moveError("credit", "applyCredit");
        return Respond.again(fields, issuePage(id, form));
    }

    @GET
    @Path("{original}/credit")
    @Transactional
    public CreditPage askToCredit(@PathParam("original") InvoiceId id) {
        return creditPage(id, viewer.dated(Reversal.class, Map.of()));
    }

    private CreditPage creditPage(InvoiceId id, Form<Reversal> form) {
        return new CreditPage(readInvoices.invoice(id), form.labeled("invoices"));
    }

    @POST
    @Path("{original}/credit")
    public Response credit(@PathParam("original") InvoiceId id, Form<Reversal> form) {
        return form.run(creditInvoice::credit)
                ? done(id, "invoices.credited")
                : Respond.again(form.fields(), creditPage(id, form));
    }

    @GET
    @Path("{invoice}/apply")
    @Transactional
    public ApplyPage askToApply(@PathParam("invoice") InvoiceId id) {
        IssuedInvoice invoice = readInvoices.invoice(id);
        Money most = least(readPayments.credit(invoice.customer()), invoice.open());
        Map<String, String> values = Map.of("amount", viewer.notation().plain(most));
        return applyPage(invoice, viewer.dated(ApplyCredit.Apply.class, values));
    }

    private ApplyPage applyPage(IssuedInvoice invoice, Form<ApplyCredit.Apply> form) {
        return new ApplyPage(invoice, readPayments.credit(invoice.customer()), form.labeled("invoices"));
    }

    @POST
    @Path("{invoice}/apply")
    public Response apply(@PathParam("invoice") InvoiceId id, Form<ApplyCredit.Apply> form) {
        return form.run(applyCredit::apply)
                ? done(id, "invoices.applied")
                : Respond.again(form.fields(), applyPage(readInvoices.invoice(id), form));
    }

    /** Unapplies credit; pressing twice is answered like pressing once. */
    @POST
    @Path("{invoice}/unapply")
    public Response unapply(@PathParam("invoice") InvoiceId id, Form<Reversal> form) {
        form.given("reason", Texts.of(Locale.ENGLISH, "invoices.unapply-reason"));
        return form.run(reversal -> applyCredit.undo(id, reversal))
                ? done(id, "invoices.unapplied")
                : Respond.again(form.fields(), issuedPage(readInvoices.invoice(id), form.fields()));
    }

    private static Response done(InvoiceId invoice, String key) {
        return Respond.to("/invoices/" + invoice, key);
    }
}
