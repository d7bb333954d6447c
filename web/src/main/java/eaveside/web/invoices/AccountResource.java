package eaveside.web.invoices;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.RecordPayment;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Ids;
import eaveside.kernel.Money;
import eaveside.kernel.Slice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadLedger;
import eaveside.web.Page;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
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
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A customer's account: what is due, unapplied credit, what was paid; and refunds. */
@Path("/invoices/account/{customer}")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class AccountResource {
    private static final int PAYMENTS = 25;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadLedger readLedger;

    @Inject
    RecordPayment recordPayment;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /** @param  accounts the ledger's codes, for opening the figures */
    public record AccountPage(
            Customer customer,
            List<InvoiceSummary> open,
            Money owed,
            Money credit,
            Slice<ReadPayments.Row> payments,
            @Nullable String more,
            Map<AccountRole, AccountCode> accounts,
            Map<String, String> methods,
            Form<RecordPayment.Refund> form)
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
    public AccountPage account(
            @PathParam("customer") CustomerId customer, @QueryParam("after") @Nullable String after) {
        return page(
                customer,
                after,
                viewer.form(
                        RecordPayment.Refund.class,
                        Map.of(
                                "id",
                                Ids.next().toString(),
                                "date",
                                books.today().toString(),
                                "amount",
                                viewer.notation()
                                        .plain(readPayments.credit(customer).amount()))));
    }

    private AccountPage page(CustomerId id, @Nullable String after, Form<RecordPayment.Refund> form) {
        List<InvoiceSummary> open = readInvoices.outstandingOf(id);
        Slice<ReadPayments.Row> payments = readPayments.payments(id, after, PAYMENTS);
        return new AccountPage(
                readCustomer.customer(id),
                open,
                Money.sum(
                        books.currency(),
                        open.stream().map(InvoiceSummary::open).toList()),
                readPayments.credit(id),
                payments,
                payments.next() == null ? null : "/invoices/account/" + id + "?after=" + payments.next(),
                readLedger.accountsInRoles(),
                Choices.methods(viewer.view()),
                form.labeled("invoices"));
    }

    /** Pays credit back to the customer. */
    @POST
    @Path("refund")
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response refund(@PathParam("customer") CustomerId customer, Form<RecordPayment.Refund> form) {
        return form.run(recordPayment::refund)
                ? Respond.to("/payments/" + form.fields().typed("id"), "invoices.refunded")
                : Respond.again(form.fields(), page(customer, null, form));
    }
}
