package eaveside.web.invoices;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.PaymentMethod;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.RecordPayment;
import eaveside.invoicing.RecordPayment.Refund;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.Slice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ReadLedger;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Form;
import eaveside.web.forms.Options;
import eaveside.web.forms.PageResource;
import eaveside.web.forms.Respond;
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
import jakarta.ws.rs.core.Response;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** A customer's account: what is due, unapplied credit, what was paid; and refunds. */
@Path("/invoices/account/{customer}")
@Dependent
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class AccountResource extends PageResource {
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

    /** @param  accounts the ledger's codes, for opening the figures */
    public record AccountPage(
            Customer customer,
            List<InvoiceSummary> open,
            Money credit,
            Slice<ReadPayments.Row> payments,
            Map<AccountRole, AccountCode> accounts,
            Form<Refund> form)
            implements Page {
        public Money owed() {
            return Money.sum(
                    credit.currency(), open.stream().map(InvoiceSummary::open).toList());
        }

        /** The address of the entries of one of the customer's accounts. */
        public String entries(AccountRole role) {
            return "/books/entries?account=" + accounts.get(role) + "&customer=" + customer.id();
        }

        /** The address of the next payments, or null. */
        public @Nullable String more() {
            return payments.next() == null ? null : "/invoices/account/" + customer.id() + "?after=" + payments.next();
        }
    }

    @GET
    @Transactional
    public AccountPage account(
            @PathParam("customer") CustomerId customer, @QueryParam("after") @Nullable String after) {
        String credit = viewer.notation().plain(readPayments.credit(customer));
        return page(customer, after, viewer.dated(Refund.class, Map.of("amount", credit)));
    }

    private AccountPage page(CustomerId id, @Nullable String after, Form<Refund> form) {
        View view = viewer.view();
        Map<String, String> methods = Options.of(
                List.of(PaymentMethod.values()),
                PaymentMethod::name,
                method -> view.t("invoices.payment.method", method));
        return new AccountPage(
                readCustomer.customer(id),
                readInvoices.outstandingOf(id),
                readPayments.credit(id),
                readPayments.payments(id, after, PAYMENTS),
                readLedger.accountsInRoles(),
                form.labeled("invoices").choosing("method", methods));
    }

    /** Pays credit back to the customer. */
    @POST
    @Path("refund")
    public Response refund(@PathParam("customer") CustomerId customer, Form<Refund> form) {
        return form.run(recordPayment::refund)
                ? Respond.to("/payments/" + form.fields().typed("id"), "invoices.refunded")
                : Respond.again(form.fields(), page(customer, null, form));
    }
}
