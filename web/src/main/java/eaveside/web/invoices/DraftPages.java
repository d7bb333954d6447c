package eaveside.web.invoices;

import eaveside.customers.Customer;
import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.Draft;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.LineOrigin;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Refusal;
import eaveside.kernel.Slice;
import eaveside.kernel.Unit;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
import eaveside.web.invoices.DraftFormPage.Totals;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Writing and editing drafts; the totals follow as one types, or at the press of a button. */
@Path("/invoices")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class DraftPages extends PageResource {
    private static final int CUSTOMERS = 30;

    @Inject
    DraftInvoice draftInvoice;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    FindCustomers findCustomers;

    @Inject
    Choices choices;

    /** Which customer the new invoice goes to. */
    public record ChoosePage(String q, Slice<CustomerLine> customers) implements Page {}

    @GET
    @Path("new")
    @Transactional
    public Page fresh(
            @QueryParam("customer") @DefaultValue("") String customer, @QueryParam("q") @DefaultValue("") String q) {
        if (customer.isEmpty()) {
            return new ChoosePage(q, findCustomers.find(q, true, null, CUSTOMERS));
        }
        MultivaluedMap<String, String> blank = new MultivaluedHashMap<>(Map.of(
                "id", InvoiceId.next().toString(),
                "customer", customer,
                "serviceDate", viewer.view().today().toString()));
        return page(form(withAnotherLine(blank)), null, Totals.missing(List.of()));
    }

    @GET
    @Path("{id}/edit")
    @Transactional
    public DraftFormPage edit(@PathParam("id") InvoiceId id) {
        InvoiceDraft draft = readInvoices.draft(id);
        return page(viewer.form(draft.content()), draft, new Totals(draft.content(), draft.totals(), List.of()));
    }

    @POST
    public Response save(MultivaluedMap<String, String> sent) {
        MultivaluedMap<String, String> filled = choices.fill(sent);
        Form<Draft> form = form(filled);
        if (form.run(draft -> draftInvoice.save(draft, viewer.id()))) {
            return Respond.to("/invoices/" + form.fields().typed("id"), "invoices.saved");
        }
        InvoiceDraft editing = editing(form);
        // Read afresh: what the use case refused does not keep the totals from being shown.
        return Respond.again(form.fields(), page(form, editing, totals(form(filled), editing)));
    }

    /** Answers with the totals alone where only they are to be exchanged, otherwise with the form. */
    @POST
    @Path("calculation")
    public Response calculate(@HeaderParam("HX-Target") @Nullable String target, MultivaluedMap<String, String> sent) {
        MultivaluedMap<String, String> filled = choices.fill(sent);
        Form<Draft> form = form(filled);
        InvoiceDraft editing = editing(form);
        Totals totals = totals(form, editing);
        if ("totals".equals(target)) {
            return Response.ok(totals).header("Vary", "HX-Request, HX-Target").build();
        }
        // Asking for another row, or choosing a service, is no attempt at finishing: what is still missing is no error
        // yet.
        boolean more = form.fields().ticked("more");
        Form<Draft> shown = more ? form(withAnotherLine(filled)) : filled == sent ? form : form(filled);
        return Respond.again(shown.fields(), page(shown, editing, totals));
    }

    private Form<Draft> form(MultivaluedMap<String, String> sent) {
        Fields fields = viewer.fields(sent);
        Set<String> leftOut = fields.rows("line").stream()
                .map(row -> "line-" + row + "-")
                .filter(line -> isLeftOut(fields, line))
                .collect(Collectors.toSet());
        Form<Draft> form = Form.sent(Draft.class, fields).labeled("invoices");
        for (int row : fields.rows("adjustment")) {
            // The invoice's lines are rows, too.
            for (String name : List.of("type", "amount", "reason", "taxCode")) {
                String field = "adjustment-" + row + "-" + name;
                fields.called(field, viewer.view().t("invoices.adjustment-row", fields.label(name), row + 1));
            }
        }
        return form.in(path -> {
                    String chosen = fields.typed(path.replaceFirst("(gross|quantity)$", "quantityUnit"));
                    return chosen.isEmpty() ? Unit.PIECE : Unit.ofCode(chosen);
                })
                .ignoring(sent.keySet().stream()
                        .filter(name -> leftOut.contains(line(name)))
                        .toList());
    }

    /** What the names of the fields of the same line begin with. */
    private static String line(String name) {
        return name.substring(0, name.indexOf('-', "line-".length()) + 1);
    }

    /** A line in which nothing was written, whatever is chosen on it, or that is to be left out. */
    private static boolean isLeftOut(Fields fields, String line) {
        return fields.ticked(line + "drop")
                || Stream.of("description", "quantity", "gross")
                        .allMatch(name -> fields.typed(line + name).isBlank());
    }

    private @Nullable InvoiceDraft editing(Form<Draft> form) {
        return form.isNew()
                ? null
                : readInvoices
                        .draftIfThere(new InvoiceId(form.fields().id("id")))
                        .orElse(null);
    }

    private Totals totals(Form<Draft> form, @Nullable InvoiceDraft editing) {
        Draft draft = form.read();
        if (draft == null) {
            return Totals.missing(
                    form.fields().errors().values().stream().distinct().toList());
        }
        try {
            Map<InvoiceLineId, LineOrigin> origins = editing == null ? Map.of() : editing.origins();
            return new Totals(draft, draftInvoice.preview(draft, origins), List.of());
        } catch (Refusal refusal) {
            form.refused(refusal);
            return Totals.missing(List.of(refusal.said()));
        }
    }

    private DraftFormPage page(Form<Draft> form, @Nullable InvoiceDraft editing, Totals totals) {
        Customer customer = readCustomer.customer(CustomerId.of(form.fields().typed("customer")));
        return new DraftFormPage(
                form.labeled("invoices"),
                customer,
                editing,
                choices.services(),
                choices.serviceLines(),
                choices.taxCodes(viewer.view()),
                readPayments.credit(customer.id()),
                totals);
    }

    /** The form with an empty line more: like the line before, or, for the first, of whatever service is chosen on it. */
    private static MultivaluedMap<String, String> withAnotherLine(MultivaluedMap<String, String> form) {
        Fields before = Fields.shown(form);
        int row = Fields.andNext(before.rows("line")).getLast();
        MultivaluedMap<String, String> longer = new MultivaluedHashMap<>(form);
        longer.putSingle("line-" + row + "-quantityUnit", Unit.PIECE.code());
        for (String name : List.of("serviceLine", "taxCode")) {
            longer.putSingle("line-" + row + "-" + name, before.typed("line-" + (row - 1) + "-" + name));
        }
        return longer;
    }
}
