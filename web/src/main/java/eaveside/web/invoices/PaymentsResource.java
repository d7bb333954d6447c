package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadInvoices.Row;
import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.RecordPayment;
import eaveside.invoicing.RecordPayment.Allocation;
import eaveside.invoicing.RecordPayment.Payment;
import eaveside.invoicing.ReversePayment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Ids;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
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
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Recording what a customer paid, and reversing what was recorded wrongly. */
@Path("/payments")
@Dependent
@Produces(MediaType.TEXT_HTML)
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@For({Role.OWNER, Role.OFFICE})
public class PaymentsResource {
    private final ReadInvoices readInvoices;
    private final ReadPayments readPayments;
    private final ReadCustomer readCustomer;
    private final RecordPayment recordPayment;
    private final ReversePayment reversePayment;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public PaymentsResource(
            ReadInvoices readInvoices,
            ReadPayments readPayments,
            ReadCustomer readCustomer,
            RecordPayment recordPayment,
            ReversePayment reversePayment,
            Books books,
            Viewer viewer) {
        this.readInvoices = readInvoices;
        this.readPayments = readPayments;
        this.readCustomer = readCustomer;
        this.recordPayment = recordPayment;
        this.reversePayment = reversePayment;
        this.books = books;
        this.viewer = viewer;
    }

    /** The form, with the invoices that the money may go to. */
    public record FormPage(Customer customer, List<Row> open, Map<String, String> methods, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/payment-form.jte";
        }

        public String field(Row invoice) {
            return PaymentForm.field(invoice.id());
        }
    }

    /** A recorded payment. */
    public record PaymentPage(
            ReadPayments.View payment, Map<InvoiceId, IssuedInvoice> invoices, DocumentId reversalId, Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/payment.jte";
        }
    }

    @GET
    @Path("new")
    @Transactional
    public FormPage form(
            @QueryParam("invoice") @DefaultValue("") String invoice,
            @QueryParam("customer") @DefaultValue("") String customer) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("id", Ids.next().toString());
        values.put("date", books.today().toString());
        if (invoice.isEmpty()) {
            values.put("customer", CustomerId.of(customer).toString());
        } else {
            IssuedInvoice paid = readInvoices.invoice(InvoiceId.of(invoice));
            values.put("customer", paid.customer().toString());
            if (paid.open().isPositive()) {
                values.put("amount", paid.open().amount().toPlainString());
                values.put(PaymentForm.field(paid.id()), paid.open().amount().toPlainString());
            }
        }
        return page(Fields.showing(values));
    }

    private FormPage page(Fields fields) {
        CustomerId customer = CustomerId.of(fields.typed("customer"));
        return new FormPage(
                readCustomer.customer(customer),
                readInvoices.outstandingOf(customer),
                Choices.methods(viewer.view()),
                fields);
    }

    @POST
    public Response record(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        Payment payment = new PaymentForm(fields, books.currency())
                .payment(List.copyOf(form.keySet()), books.today(), viewer.id());
        if (payment != null && fields.run(() -> recordPayment.record(payment))) {
            return done(payment.id(), "invoices.payment-recorded");
        }
        return Response.status(fields.status()).entity(page(fields)).build();
    }

    /** Fills in how the amount spreads over the open invoices; records nothing. */
    @POST
    @Untold("it works out and changes nothing")
    @Path("spread")
    public Response spread(MultivaluedMap<String, String> form) {
        Fields fields = viewer.fields(form);
        Money amount = fields.money("amount", books.currency());
        if (fields.hasErrors()) {
            return Response.status(fields.status()).entity(page(fields)).build();
        }
        MultivaluedMap<String, String> filled = new MultivaluedHashMap<>(form);
        filled.keySet().removeIf(name -> name.startsWith("pays-"));
        List<Row> open = readInvoices.outstandingOf(CustomerId.of(fields.typed("customer")));
        for (Allocation allocation : PaymentForm.oldestFirst(amount, open)) {
            filled.putSingle(
                    PaymentForm.field(allocation.invoice()),
                    allocation.amount().amount().toPlainString());
        }
        return Response.ok(page(viewer.fields(filled))).build();
    }

    @GET
    @Path("{id}")
    @Transactional
    public PaymentPage payment(@PathParam("id") String id) {
        return paymentPage(PaymentId.of(id), Fields.empty());
    }

    private PaymentPage paymentPage(PaymentId id, Fields fields) {
        ReadPayments.View payment = readPayments.payment(id);
        Map<InvoiceId, IssuedInvoice> invoices = new LinkedHashMap<>();
        payment.allocations().keySet().forEach(invoice -> invoices.put(invoice, readInvoices.invoice(invoice)));
        return new PaymentPage(payment, invoices, DocumentId.next(), fields);
    }

    @POST
    @Path("{id}/reverse")
    public Response reverse(@PathParam("id") String id, MultivaluedMap<String, String> form) {
        PaymentId payment = PaymentId.of(id);
        Fields fields = viewer.fields(form);
        Reversal reversal = new Reversal(
                new DocumentId(fields.id("id")),
                new DocumentId(payment.value()),
                null,
                fields.text("reason"),
                viewer.id());
        if (fields.run(() -> reversePayment.reverse(reversal))) {
            return done(payment, "invoices.payment-reversed");
        }
        return Response.status(fields.status())
                .entity(paymentPage(payment, fields))
                .build();
    }

    private static Response done(PaymentId payment, String key) {
        return Response.seeOther(URI.create("/payments/" + payment + "?done=" + key))
                .build();
    }
}
