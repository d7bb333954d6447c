package eaveside.web.invoices;

import eaveside.invoicing.ApplyCredit;
import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.CreditOnHand;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssueInvoice;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.ledger.ReverseDocument.Reversal;
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
import java.util.Locale;
import java.util.Map;

/** What posts: issuing, crediting in full, applying credit. Each has a page that says what will happen first. */
@Path("/invoices")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class InvoiceActs extends PageResource {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    IssueInvoice issueInvoice;

    @Inject
    CreditInvoice creditInvoice;

    @Inject
    ApplyCredit applyCredit;

    @Inject
    InvoicePages invoicePages;

    @Inject
    Names names;

    /**
     * Before a draft is issued.
     *
     * @param  credit unapplied credit beside what the draft takes, as far as the invoice could take it
     * @param  onHand all of that credit
     */
    public record IssuePage(
            InvoiceDraft draft, String customerName, Money credit, Money onHand, Form<IssueInvoice.Issue> form)
            implements Page {}

    /** Before an invoice is credited in full. */
    public record CreditPage(IssuedInvoice invoice, Form<Reversal> form) implements Page {}

    /** Before the customer's credit pays an invoice. */
    public record ApplyPage(IssuedInvoice invoice, Money credit, Form<ApplyCredit.Apply> form) implements Page {}

    @GET
    @Path("{id}/issue")
    @Transactional
    public IssuePage askToIssue(@PathParam("id") InvoiceId id) {
        return issuePage(id, viewer.dated(IssueInvoice.Issue.class, Map.of()));
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
                : Respond.again(form.fields(), invoicePages.issuedPage(readInvoices.invoice(id), form.fields()));
    }

    private static Response done(InvoiceId invoice, String key) {
        return Respond.to("/invoices/" + invoice, key);
    }
}
