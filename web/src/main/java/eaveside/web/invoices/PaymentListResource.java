package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.Slice;
import eaveside.web.Csv;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** All money that came in or was paid back, the newest first: to hold against the bank's statement. */
@Path("/payments")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class PaymentListResource {
    private static final int PAGE = 50;
    private static final int EXPORT = 20_000;

    private final ReadPayments readPayments;
    private final Viewer viewer;

    @Inject
    public PaymentListResource(ReadPayments readPayments, Viewer viewer) {
        this.readPayments = readPayments;
        this.viewer = viewer;
    }

    /** A page of the list. */
    public record PaymentsPage(Slice<ReadPayments.Row> payments) implements Page {
        @Override
        public String template() {
            return "invoices/payments.jte";
        }
    }

    @GET
    @Transactional
    public PaymentsPage payments(@QueryParam("after") @Nullable String after) {
        return new PaymentsPage(readPayments.payments(null, after, PAGE));
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv() {
        View view = viewer.view();
        return Csv.download(
                "payments",
                List.of("number", "date", "customer", "how", "reference", "amount", "reversed"),
                readPayments.payments(null, null, EXPORT).rows().stream()
                        .map(p -> List.of(
                                String.valueOf(p.number()),
                                p.date().toString(),
                                p.customerName(),
                                view.t("invoices.method", p.method()),
                                p.reference(),
                                p.amount().amount().toPlainString(),
                                p.reversedBy() == null ? "" : "yes"))
                        .toList());
    }
}
