package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.invoicing.ApplyCredit;
import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.CreditOnHand;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssueInvoice;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Ids;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.Texts;
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
import java.util.Locale;
import java.util.Map;

/** What posts: issuing, crediting in full, matching credit. Each has a page that says what will happen first. */
@Path("/invoices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@For({Role.OWNER, Role.OFFICE})
public class InvoiceActs {
    private final ReadInvoices readInvoices;
    private final ReadPayments readPayments;
    private final IssueInvoice issueInvoice;
    private final CreditInvoice creditInvoice;
    private final ApplyCredit applyCredit;
    private final Books books;
    private final Names names;
    private final Viewer viewer;

    @Inject
    public InvoiceActs(
            ReadInvoices readInvoices,
            ReadPayments readPayments,
            IssueInvoice issueInvoice,
            CreditInvoice creditInvoice,
            ApplyCredit applyCredit,
            Books books,
            Names names,
            Viewer viewer) {
        this.readInvoices = readInvoices;
        this.readPayments = readPayments;
        this.issueInvoice = issueInvoice;
        this.creditInvoice = creditInvoice;
        this.applyCredit = applyCredit;
        this.books = books;
        this.names = names;
        this.viewer = viewer;
    }

    /**
     * Before a draft is issued.
     *
     * @param  credit that the customer has unapplied beside what the draft takes, as far as the invoice could take it
     * @param  onHand all of that credit
     */
    public record IssuePage(InvoiceDraft draft, String customerName, Money credit, Money onHand, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/issue.jte";
        }
    }

    /** Before an invoice is credited in full. */
    public record CreditPage(IssuedInvoice invoice, Money settled, Fields fields) implements Page {
        @Override
        public String template() {
            return "invoices/credit.jte";
        }
    }

    /** Before the customer's credit pays an invoice. */
    public record ApplyPage(IssuedInvoice invoice, Money credit, Fields fields) implements Page {
        @Override
        public String template() {
            return "invoices/apply.jte";
        }
    }

    @GET
    @Path("{id}/issue")
    @Transactional
    public IssuePage askToIssue(@PathParam("id") String id) {
        return issuePage(
                InvoiceId.of(id), Fields.showing(Map.of("date", books.today().toString(), "applyCredit", "yes")));
    }

    private IssuePage issuePage(InvoiceId id, Fields fields) {
        InvoiceDraft draft = readInvoices.draft(id);
        InvoiceTotals totals = draft.totals();
        Money onHand = readPayments.credit(draft.customer()).minus(totals.prepaid());
        Money none = Money.zero(onHand.currency());
        Money most = onHand.compareTo(totals.due()) < 0 ? onHand : totals.due();
        return new IssuePage(draft, names.customer(draft.customer()), most.isPositive() ? most : none, onHand, fields);
    }

    /** A page that showed no credit has asked nobody. */
    private static CreditOnHand credit(Fields fields) {
        if (!fields.ticked("creditShown")) {
            return CreditOnHand.ASK;
        }
        return fields.ticked("applyCredit") ? CreditOnHand.APPLY : CreditOnHand.KEEP;
    }

    @POST
    @Path("{id}/issue")
    public Response issue(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        InvoiceId invoice = InvoiceId.of(id);
        LocalDate date = fields.date("date", books.today());
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        boolean issued = fields.run(
                () -> issueInvoice.issue(new IssueInvoice.Issue(invoice, version, date, credit(fields), viewer.id())));
        if (issued) {
            return done(invoice, "invoices.issued");
        }
        return Response.status(fields.status())
                .entity(issuePage(
                        invoice,
                        fields.ticked("creditShown") ? fields : fields.completedBy(Map.of("applyCredit", "yes"))))
                .build();
    }

    @GET
    @Path("{id}/credit")
    @Transactional
    public CreditPage askToCredit(@PathParam("id") String id) {
        return creditPage(InvoiceId.of(id), withId());
    }

    private CreditPage creditPage(InvoiceId id, Fields fields) {
        IssuedInvoice invoice = readInvoices.invoice(id);
        InvoiceTotals totals = invoice.totals();
        return new CreditPage(invoice, totals.gross().plus(totals.rounding()).minus(invoice.open()), fields);
    }

    @POST
    @Path("{id}/credit")
    public Response credit(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        InvoiceId invoice = InvoiceId.of(id);
        Reversal reversal = new Reversal(
                new DocumentId(fields.id("id")),
                new DocumentId(invoice.value()),
                fields.date("date", books.today()),
                fields.text("reason"),
                viewer.id());
        if (fields.run(() -> creditInvoice.credit(reversal))) {
            return done(invoice, "invoices.credited");
        }
        return Response.status(fields.status())
                .entity(creditPage(invoice, fields))
                .build();
    }

    @GET
    @Path("{id}/apply")
    @Transactional
    public ApplyPage askToApply(@PathParam("id") String id) {
        IssuedInvoice invoice = readInvoices.invoice(InvoiceId.of(id));
        Money credit = readPayments.credit(invoice.customer());
        Money most = credit.compareTo(invoice.open()) < 0 ? credit : invoice.open();
        return new ApplyPage(
                invoice,
                credit,
                Fields.showing(Map.of(
                        "id", Ids.next().toString(),
                        "date", books.today().toString(),
                        "amount", most.amount().toPlainString())));
    }

    @POST
    @Path("{id}/apply")
    public Response apply(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        InvoiceId invoice = InvoiceId.of(id);
        DocumentId document = new DocumentId(fields.id("id"));
        Money amount = fields.money("amount", books.currency());
        LocalDate date = fields.date("date", books.today());
        boolean applied = fields.run(
                () -> applyCredit.apply(new ApplyCredit.Apply(document, invoice, amount, date, viewer.id())));
        if (applied) {
            return done(invoice, "invoices.applied");
        }
        IssuedInvoice stored = readInvoices.invoice(invoice);
        return Response.status(fields.status())
                .entity(new ApplyPage(stored, readPayments.credit(stored.customer()), fields))
                .build();
    }

    /** Takes a match back; pressing twice is answered like pressing once. */
    @POST
    @Path("{id}/unapply")
    public Response unapply(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        InvoiceId invoice = InvoiceId.of(id);
        applyCredit.undo(new Reversal(
                new DocumentId(fields.id("id")),
                DocumentId.of(fields.typed("apply")),
                null,
                Texts.of(Locale.ENGLISH, "invoices.unapply-reason"),
                viewer.id()));
        return done(invoice, "invoices.unapplied");
    }

    private Fields withId() {
        return Fields.showing(
                Map.of("id", Ids.next().toString(), "date", books.today().toString()));
    }

    private static Response done(InvoiceId invoice, String key) {
        return Response.seeOther(URI.create("/invoices/" + invoice + "?done=" + key))
                .build();
    }
}
