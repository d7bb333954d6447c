package eaveside.web.invoices;

import eaveside.invoicing.ReadPayments;
import eaveside.web.forms.ListPage;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;

/** All money that came in or was paid back, the newest first: to hold against the bank's statement. */
@Path("/payments")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class PaymentListResource {
    @Inject
    ReadPayments readPayments;

    @Inject
    Viewer viewer;

    private Listing<ReadPayments.Row> list() {
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

    @GET
    @Transactional
    public ListPage<ReadPayments.Row> payments(@Context UriInfo asked) {
        return list().page(asked);
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(@Context UriInfo asked) {
        return list().csv(asked, viewer.view());
    }
}
