package eaveside.web.invoices;

import eaveside.invoicing.ReadPayments;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;

/** All money that came in or was paid back, the newest first: to hold against the bank's statement. */
@Path("/payments")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PaymentListPages extends ListResource<ReadPayments.Row> {
    @Inject
    ReadPayments readPayments;

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
}
