package eaveside.web.invoices;

import eaveside.access.Role;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.PaymentMethod;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.RecordPayment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Ids;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Slice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadLedger;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
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
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A customer's account: what is open, what is to the good, what was paid; and paying credit back. */
@Path("/invoices/account/{customer}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class AccountResource {
    private static final int PAYMENTS = 25;

    private final ReadInvoices readInvoices;
    private final ReadPayments readPayments;
    private final ReadCustomer readCustomer;
    private final ReadLedger readLedger;
    private final RecordPayment recordPayment;
    private final Books books;
    private final Viewer viewer;

    @Inject
    public AccountResource(
            ReadInvoices readInvoices,
            ReadPayments readPayments,
            ReadCustomer readCustomer,
            ReadLedger readLedger,
            RecordPayment recordPayment,
            Books books,
            Viewer viewer) {
        this.readInvoices = readInvoices;
        this.readPayments = readPayments;
        this.readCustomer = readCustomer;
        this.readLedger = readLedger;
        this.recordPayment = recordPayment;
        this.books = books;
        this.viewer = viewer;
    }

    /** @param  accounts the ledger's codes, for opening the figures */
    public record AccountPage(
            Customer customer,
            List<ReadInvoices.Row> open,
            Money owed,
            Money credit,
            Slice<ReadPayments.Row> payments,
            @Nullable String more,
            Map<AccountRole, AccountCode> accounts,
            Map<String, String> methods,
            Fields fields)
            implements Page {
        @Override
        public String template() {
            return "invoices/account.jte";
        }

        /** The address of the entries of one of the customer's accounts. */
        public String entries(AccountRole role) {
            return "/books/entries?account=" + accounts.get(role) + "&customer=" + customer.id();
        }
    }

    @GET
    @Transactional
    public AccountPage account(@PathParam("customer") String customer, @QueryParam("after") @Nullable String after) {
        CustomerId id = CustomerId.of(customer);
        return page(
                id,
                after,
                Fields.showing(Map.of(
                        "id",
                        Ids.next().toString(),
                        "date",
                        books.today().toString(),
                        "amount",
                        readPayments.credit(id).amount().toPlainString())));
    }

    private AccountPage page(CustomerId id, @Nullable String after, Fields fields) {
        List<ReadInvoices.Row> open = readInvoices.outstandingOf(id);
        Slice<ReadPayments.Row> payments = readPayments.payments(id, after, PAYMENTS);
        return new AccountPage(
                readCustomer.customer(id),
                open,
                Money.sum(
                        books.currency(),
                        open.stream().map(ReadInvoices.Row::open).toList()),
                readPayments.credit(id),
                payments,
                payments.next() == null ? null : "/invoices/account/" + id + "?after=" + payments.next(),
                readLedger.accountsInRoles(),
                Choices.methods(viewer.view()),
                fields);
    }

    /** Pays credit back to the customer. */
    @POST
    @Path("refund")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response refund(@PathParam("customer") String customer, MultivaluedMap<String, String> form) {
        CustomerId id = CustomerId.of(customer);
        Fields fields = viewer.fields(form);
        PaymentId payment = new PaymentId(fields.id("id"));
        LocalDate date = fields.date("date", books.today());
        Money amount = fields.money("amount", books.currency());
        PaymentMethod method = fields.choice("method", PaymentMethod.class);
        String reference = fields.optional("reference");
        boolean paid = method != null
                && fields.run(() -> recordPayment.refund(
                        new RecordPayment.Refund(payment, id, date, amount, method, reference, viewer.id())));
        if (paid) {
            return Response.seeOther(URI.create("/payments/" + payment + "?done=invoices.refunded"))
                    .build();
        }
        return Response.status(fields.status()).entity(page(id, null, fields)).build();
    }
}
