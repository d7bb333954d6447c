package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.DraftContent;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.EditDraft;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.LineOrigin;
import eaveside.invoicing.PreviewDraft;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Refusal;
import eaveside.kernel.Slice;
import eaveside.kernel.Unit;
import eaveside.ledger.Books;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.security.For;
import eaveside.web.security.Untold;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Writing and changing drafts; the totals follow as one types, or at the press of a button. */
@Path("/invoices")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@For({Role.OWNER, Role.OFFICE})
public class DraftResource {
    private static final int CUSTOMERS = 30;

    private final DraftInvoice draftInvoice;
    private final EditDraft editDraft;
    private final PreviewDraft previewDraft;
    private final ReadInvoices readInvoices;
    private final ReadPayments readPayments;
    private final ReadCustomer readCustomer;
    private final FindCustomers findCustomers;
    private final Choices choices;
    private final ServiceOfLine serviceOfLine;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public DraftResource(
            DraftInvoice draftInvoice,
            EditDraft editDraft,
            PreviewDraft previewDraft,
            ReadInvoices readInvoices,
            ReadPayments readPayments,
            ReadCustomer readCustomer,
            FindCustomers findCustomers,
            Choices choices,
            ServiceOfLine serviceOfLine,
            Books books,
            Viewer viewer) {
        this.draftInvoice = draftInvoice;
        this.editDraft = editDraft;
        this.previewDraft = previewDraft;
        this.readInvoices = readInvoices;
        this.readPayments = readPayments;
        this.readCustomer = readCustomer;
        this.findCustomers = findCustomers;
        this.choices = choices;
        this.serviceOfLine = serviceOfLine;
        this.books = books;
        this.viewer = viewer;
    }

    /** Whom the new invoice goes to. */
    public record ChoosePage(String q, Slice<FindCustomers.CustomerLine> customers) implements Page {
        @Override
        public String template() {
            return "invoices/choose.jte";
        }
    }

    @GET
    @Path("new")
    @Transactional
    public Page form(
            @QueryParam("customer") @DefaultValue("") String customer, @QueryParam("q") @DefaultValue("") String q) {
        if (customer.isEmpty()) {
            return new ChoosePage(q, findCustomers.find(q, true, null, CUSTOMERS));
        }
        MultivaluedMap<String, String> blank = new MultivaluedHashMap<>();
        blank.putSingle("id", InvoiceId.next().toString());
        blank.putSingle("customer", customer);
        blank.putSingle("serviceDate", books.today().toString());
        withAnotherLine(blank);
        return page(viewer.fields(blank), null, TotalsPage.none(), false);
    }

    @POST
    public Response create(MultivaluedMap<String, String> sent) {
        MultivaluedMap<String, String> form = serviceOfLine.fill(sent);
        Fields fields = viewer.fields(form);
        DraftContent content = form(fields).content();
        InvoiceId id = new InvoiceId(fields.id("id"));
        CustomerId customer = CustomerId.of(fields.typed("customer"));
        boolean saved = content != null
                && fields.run(() -> draftInvoice.draft(new DraftInvoice.NewDraft(id, customer, content, viewer.id())));
        return saved ? saved(id) : again(fields, form, null, false);
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public DraftFormPage edit(@PathParam("id") String id) {
        InvoiceDraft draft = readInvoices.draft(InvoiceId.of(id));
        return page(DraftForm.showing(draft), draft, TotalsPage.of(draft.content(), draft.totals()), false);
    }

    @POST
    @Path("{id}/edit")
    public Response change(@PathParam("id") String id, MultivaluedMap<String, String> sent) {
        MultivaluedMap<String, String> form = serviceOfLine.fill(sent);
        Fields fields = viewer.fields(form);
        InvoiceId invoice = InvoiceId.of(id);
        DraftContent content = form(fields).content();
        int version = fields.integer("version", 0, Integer.MAX_VALUE);
        List<InvoiceDraft> theirs = new ArrayList<>();
        boolean saved = content != null
                && fields.run(() -> {
                    try {
                        editDraft.edit(new EditDraft.Edit(invoice, version, content));
                    } catch (InvoiceRefusal.DraftChanged changed) {
                        theirs.add(changed.theirs());
                        throw changed;
                    }
                });
        return saved ? saved(invoice) : again(fields, form, readInvoices.draft(invoice), !theirs.isEmpty());
    }

    private static Response saved(InvoiceId id) {
        return Response.seeOther(URI.create("/invoices/" + id + "?done=invoices.saved"))
                .build();
    }

    private Response again(
            Fields fields, MultivaluedMap<String, String> form, @Nullable InvoiceDraft editing, boolean overtaken) {
        // Read afresh: what the use case refused does not keep the totals from being shown.
        TotalsPage totals = totals(viewer.fields(form), editing);
        return Response.status(fields.status())
                .entity(page(fields, editing, totals, overtaken))
                .build();
    }

    /** Answers with the totals alone where only they are to be exchanged, otherwise with the form. */
    @POST
    @Untold("it works out and changes nothing")
    @Path("calculation")
    public Response calculate(@HeaderParam("HX-Target") @Nullable String target, MultivaluedMap<String, String> sent) {
        MultivaluedMap<String, String> form = serviceOfLine.fill(sent);
        Fields fields = viewer.fields(form);
        String editing = fields.typed("editing");
        InvoiceDraft draft = editing.isEmpty() ? null : readInvoices.draft(InvoiceId.of(editing));
        TotalsPage totals = totals(fields, draft);
        if ("totals".equals(target)) {
            return Response.ok(totals).header("Vary", "HX-Request, HX-Target").build();
        }
        boolean more = !fields.typed("more").isEmpty();
        // Asking for another row, or choosing a service, is no attempt at finishing: what is still missing is not held
        // against anybody.
        Fields shown = more ? viewer.fields(withAnotherLine(form)) : form == sent ? fields : viewer.fields(form);
        return Response.status(shown.status())
                .entity(page(shown, draft, totals, false))
                .build();
    }

    private TotalsPage totals(Fields fields, @Nullable InvoiceDraft draft) {
        DraftContent content = form(fields).content();
        if (content == null) {
            return TotalsPage.missing(
                    fields.errors().values().stream().distinct().toList());
        }
        Map<InvoiceLineId, LineOrigin> origins = draft == null ? Map.of() : draft.origins();
        try {
            InvoiceTotals totals = previewDraft.preview(content, origins);
            return TotalsPage.of(content, totals);
        } catch (Refusal refusal) {
            fields.refused(refusal);
            return TotalsPage.missing(List.of(refusal.text()));
        }
    }

    private DraftForm form(Fields fields) {
        return new DraftForm(fields, books.currency(), books.today());
    }

    private DraftFormPage page(Fields fields, @Nullable InvoiceDraft editing, TotalsPage totals, boolean overtaken) {
        Customer customer =
                readCustomer.customer(editing == null ? CustomerId.of(fields.typed("customer")) : editing.customer());
        return new DraftFormPage(
                fields,
                customer,
                editing,
                fields.rows("line"),
                choices.services(),
                choices.serviceLines(),
                choices.taxCodes(viewer.view()),
                readPayments.credit(customer.id()),
                totals,
                overtaken);
    }

    /** The form with an empty line more: like the line before, or, for the first, of whatever service is chosen on it. */
    private MultivaluedMap<String, String> withAnotherLine(MultivaluedMap<String, String> form) {
        Fields before = viewer.fields(form);
        List<Integer> rows = before.rows("line");
        int row = rows.isEmpty() ? 0 : rows.getLast() + 1;
        String last = "line-" + (row - 1) + "-";
        MultivaluedMap<String, String> longer = rows.isEmpty() ? form : new MultivaluedHashMap<>(form);
        longer.putSingle("line-" + row + "-unit", Unit.PIECE.name());
        longer.putSingle("line-" + row + "-line", before.typed(last + "line"));
        longer.putSingle("line-" + row + "-tax", before.typed(last + "tax"));
        return longer;
    }
}
