package eaveside.web.invoices;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.RecordPayment;
import eaveside.invoicing.RecordPayment.Allocation;
import eaveside.invoicing.RecordPayment.Payment;
import eaveside.invoicing.ReversePayment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Ids;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Recording what a customer paid, and reversing what was recorded wrongly. */
@Path("/payments")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PaymentPages {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    RecordPayment recordPayment;

    @Inject
    ReversePayment reversePayment;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /**
     * The form, with the invoices that the money may go to.
     *
     * @param  rows the prefix of the fields of each
     */
    public record PaymentForm(
            Form<Payment> form, Customer customer, List<InvoiceSummary> open, Map<InvoiceId, String> rows)
            implements Page {
        @Override
        public String template() {
            return "invoices/payment-form.jte";
        }
    }

    /** A recorded payment. */
    public record PaymentPage(ReadPayments.View recorded, Map<InvoiceId, Long> numbers, Fields fields) implements Page {
        @Override
        public String template() {
            return "invoices/payment.jte";
        }
    }

    @GET
    @Path("new")
    @Transactional
    public PaymentForm fresh(
            @QueryParam("invoice") @Nullable InvoiceId invoice,
            @QueryParam("customer") @DefaultValue("") String customer) {
        IssuedInvoice pays = invoice == null ? null : readInvoices.invoice(invoice);
        CustomerId payer = pays == null ? CustomerId.of(customer) : pays.customer();
        Map<String, String> values = new LinkedHashMap<>();
        values.put("id", Ids.next().toString());
        values.put("customer", payer.toString());
        values.put("date", books.today().toString());
        if (pays != null && pays.open().isPositive()) {
            values.put("amount", viewer.notation().plain(pays.open().amount()));
            values.putAll(allocated(List.of(new Allocation(pays.id(), pays.open()))));
        }
        return page(viewer.form(Payment.class, values));
    }

    private Map<String, String> allocated(List<Allocation> allocations) {
        Map<String, String> values = new LinkedHashMap<>();
        for (int i = 0; i < allocations.size(); i++) {
            values.put(
                    "allocation-" + i + "-invoice", allocations.get(i).invoice().toString());
            values.put(
                    "allocation-" + i + "-amount",
                    viewer.notation().plain(allocations.get(i).amount().amount()));
        }
        return values;
    }

    private PaymentForm page(Form<Payment> form) {
        Fields fields = form.fields();
        CustomerId customer = CustomerId.of(fields.typed("customer"));
        List<InvoiceSummary> open = readInvoices.outstandingOf(customer);
        Map<InvoiceId, String> rows = new LinkedHashMap<>();
        List<Integer> used = fields.rows("allocation");
        int next = used.isEmpty() ? 0 : used.getLast() + 1;
        for (InvoiceSummary invoice : open) {
            int row = used.stream()
                    .filter(n -> fields.typed("allocation-" + n + "-invoice")
                            .equals(invoice.id().toString()))
                    .findFirst()
                    .orElse(next + rows.size());
            rows.put(invoice.id(), "allocation-" + row + "-");
            fields.called("allocation-" + row + "-amount", viewer.view().t("invoices.pays-of", invoice.number()));
        }
        return new PaymentForm(form.labeled("invoices"), readCustomer.customer(customer), open, rows);
    }

    @POST
    public Response record(Form<Payment> form) {
        Fields fields = form.fields();
        // An invoice beside which no amount was typed is not paid.
        form.ignoring(fields.rows("allocation").stream()
                .map(row -> "allocation-" + row + "-")
                .filter(row -> fields.typed(row + "amount").isBlank())
                .flatMap(row -> Stream.of(row + "invoice", row + "amount"))
                .toList());
        return form.run(recordPayment::record)
                ? Respond.to("/payments/" + fields.typed("id"), "invoices.payment-recorded")
                : Respond.again(fields, page(form));
    }

    /** Fills in how the amount spreads over the open invoices; records nothing. */
    @POST
    @Path("spread")
    public Response spread(Form<Payment> form) {
        Fields fields = form.fields();
        Money amount = fields.money("amount", books.currency());
        if (fields.hasErrors()) {
            return Respond.again(fields, page(form));
        }
        Map<String, String> filled = new LinkedHashMap<>();
        Stream.of("id", "customer", "date", "amount", "method", "reference", "keepAsCredit")
                .forEach(name -> filled.put(name, fields.typed(name)));
        List<InvoiceSummary> open = readInvoices.outstandingOf(CustomerId.of(fields.typed("customer")));
        filled.putAll(allocated(RecordPayment.oldestFirst(amount, open)));
        return Response.ok(page(viewer.form(Payment.class, filled))).build();
    }

    @GET
    @Path("{id}")
    @Transactional
    public PaymentPage payment(@PathParam("id") PaymentId id) {
        return page(id, Fields.showing(Map.of("id", Ids.next().toString())));
    }

    private PaymentPage page(PaymentId id, Fields fields) {
        ReadPayments.View recorded = readPayments.payment(id);
        Map<InvoiceId, Long> numbers = new LinkedHashMap<>();
        recorded.allocations().stream()
                .map(Allocation::invoice)
                .forEach(invoice ->
                        numbers.put(invoice, readInvoices.invoice(invoice).number()));
        return new PaymentPage(recorded, numbers, fields);
    }

    @POST
    @Path("{original}/reverse")
    public Response reverse(@PathParam("original") PaymentId id, Form<Reversal> form) {
        return form.run(reversePayment::reverse)
                ? Respond.to("/payments/" + id, "invoices.payment-reversed")
                : Respond.again(form.fields(), page(id, form.fields()));
    }
}
