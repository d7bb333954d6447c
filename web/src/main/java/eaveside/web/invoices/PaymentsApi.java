package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.invoicing.PaymentMethod;
import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.RecordPayment;
import eaveside.invoicing.ReversePayment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.PaymentId;
import eaveside.ledger.Books;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Json;
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
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.util.ArrayList;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Payments for scripts. */
@Path("/api/payments")
@Dependent
@Produces(MediaType.APPLICATION_JSON)
@Consumes(MediaType.APPLICATION_JSON)
@Tag(name = "Payments")
@For({Role.OWNER, Role.OFFICE})
public class PaymentsApi {
    private static final int PAGE = 100;

    private final RecordPayment recordPayment;
    private final ReversePayment reversePayment;
    private final ReadPayments readPayments;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public PaymentsApi(
            RecordPayment recordPayment,
            ReversePayment reversePayment,
            ReadPayments readPayments,
            Books books,
            Viewer viewer) {
        this.recordPayment = recordPayment;
        this.reversePayment = reversePayment;
        this.readPayments = readPayments;
        this.books = books;
        this.viewer = viewer;
    }

    @POST
    @Operation(
            summary = "Records a payment and what it pays; the rest becomes the customer's unapplied credit",
            description =
                    "A payment that pays nothing is refused unless keepAsCredit is true. It does not pay an invoice "
                            + "before the invoice's own date.")
    public Response record(InvoiceBodies.@Nullable Payment body) {
        InvoiceBodies.Payment asked = Json.required("body", body);
        PaymentId id = PaymentId.of(Json.required("id", asked.id()));
        InvoiceReading reading = InvoiceReading.in(books.currency());
        List<RecordPayment.Allocation> allocations = new ArrayList<>();
        List<InvoiceBodies.Allocation> shares = asked.allocations() == null ? List.of() : asked.allocations();
        for (InvoiceBodies.Allocation share : shares) {
            InvoiceBodies.Allocation there = Json.required("allocations", share);
            allocations.add(new RecordPayment.Allocation(
                    InvoiceId.of(Json.required("allocations.invoice", there.invoice())),
                    reading.amount("allocations.amount", there.amount())));
        }
        recordPayment.record(new RecordPayment.Payment(
                id,
                CustomerId.of(Json.required("customer", asked.customer())),
                Json.dateIfGiven("date", asked.date()),
                reading.amount("amount", asked.amount()),
                Json.choice("method", PaymentMethod.class, asked.method()),
                asked.reference() == null ? "" : asked.reference(),
                allocations,
                Boolean.TRUE.equals(asked.keepAsCredit()),
                viewer.id()));
        return Response.created(URI.create("/api/payments/" + id))
                .entity(InvoiceAnswers.Payment.of(readPayments.payment(id)))
                .build();
    }

    @GET
    @Transactional
    @Operation(summary = "Lists payments, the newest first: everybody's, or a customer's with the credit that is left")
    public InvoiceAnswers.Payments payments(
            @QueryParam("customer") @Nullable String customer, @QueryParam("after") @Nullable String after) {
        CustomerId of = customer == null ? null : CustomerId.of(customer);
        return InvoiceAnswers.Payments.of(
                readPayments.payments(of, after, PAGE), of == null ? null : readPayments.credit(of));
    }

    @GET
    @Path("{id}")
    @Transactional
    @Operation(summary = "Reads a payment with what it paid")
    public InvoiceAnswers.Payment payment(@PathParam("id") String id) {
        return InvoiceAnswers.Payment.of(readPayments.payment(PaymentId.of(id)));
    }

    @POST
    @Path("refunds")
    @Operation(summary = "Pays credit back to a customer; the same again is a retry")
    public Response refund(InvoiceBodies.@Nullable Refund body) {
        InvoiceBodies.Refund asked = Json.required("body", body);
        PaymentId id = PaymentId.of(Json.required("id", asked.id()));
        recordPayment.refund(new RecordPayment.Refund(
                id,
                CustomerId.of(Json.required("customer", asked.customer())),
                Json.dateIfGiven("date", asked.date()),
                InvoiceReading.in(books.currency()).amount("amount", asked.amount()),
                Json.choice("method", PaymentMethod.class, asked.method()),
                Json.optional(asked.reference()),
                viewer.id()));
        return Response.created(URI.create("/api/payments/" + id))
                .entity(InvoiceAnswers.Payment.of(readPayments.payment(id)))
                .build();
    }

    @POST
    @Path("{id}/reverse")
    @Operation(summary = "Reverses a payment in full, once: what it paid is open again")
    public InvoiceAnswers.Document reverse(@PathParam("id") String id, InvoiceBodies.@Nullable Reverse body) {
        InvoiceBodies.Reverse reverse = Json.required("body", body);
        PaymentId payment = PaymentId.of(id);
        InvoiceAnswers.Document answer = InvoiceAnswers.Document.of(reversePayment.reverse(new Reversal(
                DocumentId.of(Json.required("id", reverse.id())),
                new DocumentId(payment.value()),
                Json.dateIfGiven("date", reverse.date()),
                Json.required("reason", reverse.reason()),
                viewer.id())));
        return answer;
    }
}
