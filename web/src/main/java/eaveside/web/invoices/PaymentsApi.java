package eaveside.web.invoices;

import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.RecordPayment;
import eaveside.invoicing.ReversePayment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Slice;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.web.Names;
import eaveside.web.forms.Created;
import eaveside.web.forms.JsonResource;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.QueryParam;
import java.util.List;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Payments for scripts. */
@Path("/api/payments")
@Dependent
@Tag(name = "Payments")
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PaymentsApi extends JsonResource {
    private static final int PAGE = 100;

    @Inject
    RecordPayment recordPayment;

    @Inject
    ReversePayment reversePayment;

    @Inject
    ReadPayments readPayments;

    @Inject
    Names names;

    /**
     * A page of payments; ask for more with {@code after=next}.
     *
     * @param  credit the customer's unapplied credit; absent in everyone's list
     */
    public record Payments(
            List<ReadPayments.Row> payments,
            @Nullable Money credit,
            @Nullable String next) {}

    @POST
    @Operation(
            summary = "Records a payment and what it pays; the rest becomes the customer's unapplied credit",
            description =
                    "A payment that pays nothing is refused unless keepAsCredit is true, and one that leaves a rest where "
                            + "keepAsCredit is false. It does not pay an invoice "
                            + "before the invoice's own date.")
    public Created<ReadPayments.View> record(RecordPayment.Payment payment) {
        recordPayment.record(payment);
        return created(payment.id());
    }

    @POST
    @Path("refunds")
    @Operation(summary = "Pays unapplied credit back to a customer; the same again is a retry")
    public Created<ReadPayments.View> refund(RecordPayment.Refund refund) {
        recordPayment.refund(refund);
        return created(refund.id());
    }

    private Created<ReadPayments.View> created(PaymentId id) {
        return Created.at("/api/payments/" + id, readPayments.payment(id));
    }

    @GET
    @Transactional
    @Operation(summary = "Lists payments, the newest first: everyone's, or a customer's with the credit that is left")
    public Payments payments(
            @QueryParam("customer") @Nullable CustomerId customer, @QueryParam("after") @Nullable String after) {
        names.customer(customer); // an unknown one is not found
        Slice<ReadPayments.Row> page = readPayments.payments(customer, after, PAGE);
        return new Payments(page.rows(), customer == null ? null : readPayments.credit(customer), page.next());
    }

    @GET
    @Path("{id}")
    @Operation(summary = "Reads a payment with what it paid")
    public ReadPayments.View payment(@PathParam("id") PaymentId id) {
        return readPayments.payment(id);
    }

    @POST
    @Path("{original}/reversal")
    @Operation(summary = "Reverses a payment in full, once: what it paid is due again; the same again is a retry")
    public Created<Posted> reverse(Reversal reversal) {
        return Created.document(reversePayment.reverse(reversal));
    }
}
