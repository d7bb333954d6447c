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
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.ledger.Books;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Response;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * All money that came in or was paid back, to hold against the bank's statement; recording what a customer paid, and
 * reversing what was recorded wrongly.
 */
@Path("/payments")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PaymentPages extends ListResource<ReadPayments.Row> {
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
    ReadLedger readLedger;

    /** The newest first. */
    @Override
    protected Listing<ReadPayments.Row> list() {
        return Listing.<ReadPayments.Row>of(
                        "invoices.payment",
                        "/payments",
                        query -> readPayments.payments(null, query.after(), query.size()))
                .opening("number", payment -> "/payments/" + payment.id())
                .columns("date")
                .opening("customerName", payment -> "/invoices/account/" + payment.customer())
                .columns("method", "reference")
                .opening("amount", payment -> "/documents/" + payment.id())
                .column("reversed", payment -> payment.reversedBy() == null ? null : true);
    }

    /**
     * The form, with the invoices that the money may go to.
     *
     * @param  rows the prefix of the fields of each
     */
    public record PaymentFormPage(
            Form<Payment> form, Customer customer, List<InvoiceSummary> open, Map<InvoiceId, String> rows)
            implements Page {}

    /**
     * A recorded payment.
     *
     * @param  received the day that was entered; the books may count it from a later one
     */
    public record PaymentPage(
            ReadPayments.View recorded, LocalDate received, Map<InvoiceId, Long> numbers, Fields fields)
            implements Page {}

    @GET
    @Path("new")
    @Transactional
    public PaymentFormPage fresh(
            @QueryParam("invoice") @Nullable InvoiceId invoice,
            @QueryParam("customer") @DefaultValue("") String customer) {
        Map<String, String> values = new HashMap<>(Map.of("customer", customer));
        if (invoice != null) {
            IssuedInvoice pays = readInvoices.invoice(invoice);
            values.put("customer", pays.customer().toString());
            if (pays.open().isPositive()) {
                values.put("amount", viewer.notation().plain(pays.open()));
                values.putAll(allocated(List.of(new Allocation(pays.id(), pays.open()))));
            }
        }
        return page(viewer.dated(Payment.class, values));
    }

    private Map<String, String> allocated(List<Allocation> allocations) {
        Map<String, String> values = new HashMap<>();
        for (int i = 0; i < allocations.size(); i++) {
            Allocation allocation = allocations.get(i);
            values.put(row(i) + "invoice", allocation.invoice().toString());
            values.put(row(i) + "amount", viewer.notation().plain(allocation.amount()));
        }
        return values;
    }

    private static String row(int number) {
        return "allocation-" + number + "-";
    }

    private PaymentFormPage page(Form<Payment> form) {
        Fields fields = form.fields();
        CustomerId customer = CustomerId.of(fields.typed("customer"));
        List<InvoiceSummary> open = readInvoices.outstandingOf(customer);
        Map<InvoiceId, String> rows = new LinkedHashMap<>();
        List<Integer> used = fields.rows("allocation");
        int next = Fields.andNext(used).getLast();
        for (InvoiceSummary invoice : open) {
            String id = invoice.id().toString();
            String row = used.stream()
                    .map(PaymentPages::row)
                    .filter(known -> fields.typed(known + "invoice").equals(id))
                    .findFirst()
                    .orElse(row(next + rows.size()));
            rows.put(invoice.id(), row);
            fields.called(row + "amount", viewer.view().t("invoices.pays-of", String.valueOf(invoice.number())));
        }
        return new PaymentFormPage(form.labeled("invoices"), readCustomer.customer(customer), open, rows);
    }

    @POST
    public Response record(Form<Payment> form) {
        Fields fields = form.fields();
        // An invoice beside which no amount was typed is not paid.
        form.ignoring(allocations(fields, row -> fields.typed(row + "amount").isBlank()));
        return form.run(recordPayment::record)
                ? Respond.to("/payments/" + fields.typed("id"), "invoices.payment-recorded")
                : Respond.again(fields, refused(form));
    }

    /** What is wrong with a row that the page no longer has, since somebody else paid its invoice, is said of them all. */
    private PaymentFormPage refused(Form<Payment> form) {
        PaymentFormPage page = page(form);
        Fields fields = form.fields();
        fields.rows("allocation").stream()
                .map(PaymentPages::row)
                .filter(row -> !page.rows().containsValue(row))
                .forEach(row -> {
                    fields.moveError(row + "invoice", "allocations");
                    fields.moveError(row + "amount", "allocations");
                });
        return page;
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
        List<InvoiceSummary> open = readInvoices.outstandingOf(CustomerId.of(fields.typed("customer")));
        Fields spread = fields.without(allocations(fields, row -> true))
                .completedBy(allocated(RecordPayment.oldestFirst(amount, open)));
        return Response.ok(page(Form.sent(Payment.class, spread))).build();
    }

    /** The names of the fields of such rows. */
    private static Set<String> allocations(Fields fields, Predicate<String> which) {
        return fields.rows("allocation").stream()
                .map(PaymentPages::row)
                .filter(which)
                .flatMap(row -> Stream.of(row + "invoice", row + "amount"))
                .collect(Collectors.toSet());
    }

    @GET
    @Path("{id}")
    @Transactional
    public PaymentPage payment(@PathParam("id") PaymentId id) {
        return page(id, viewer.fresh(Reversal.class).fields());
    }

    private PaymentPage page(PaymentId id, Fields fields) {
        ReadPayments.View recorded = readPayments.payment(id);
        Map<InvoiceId, Long> numbers = recorded.allocations().stream()
                .map(Allocation::invoice)
                .collect(Collectors.toMap(
                        Function.identity(),
                        invoice -> readInvoices.invoice(invoice).number()));
        LocalDate received =
                readLedger.heads(List.of(new DocumentId(id.value()))).getFirst().serviceDate();
        return new PaymentPage(recorded, received, numbers, fields);
    }

    @POST
    @Path("{original}/reverse")
    public Response reverse(@PathParam("original") PaymentId id, Form<Reversal> form) {
        return form.run(reversePayment::reverse)
                ? Respond.to("/payments/" + id, "invoices.payment-reversed")
                : Respond.again(form.fields(), page(id, form.fields()));
    }
}
