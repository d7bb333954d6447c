package eaveside.web.customers;

import eaveside.customers.ReadCustomer;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.ReadBalances;
import eaveside.visits.ReadVisits;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;

/** What is asked first of a customer: what is due, when they were visited and will be, and what they bring in. */
@Shared
public class AtAGlance {
    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadPayments readPayments;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadBalances readBalances;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    Books books;

    /**
     * The figures of a customer today.
     *
     * @param  due          of all invoices
     * @param  pastDue      how much of that is past due
     * @param  daysPastDue  of the invoice that is so for longest; zero where none is
     * @param  credit       unapplied
     * @param  revenue      of this year up to today, without tax
     * @param  lastRevenue  of the last year
     */
    public record Facts(
            Money due,
            Money pastDue,
            long daysPastDue,
            Money credit,
            ReadVisits.LastAndNext visits,
            Money revenue,
            Money lastRevenue) {}

    Facts of(CustomerId customer) {
        List<InvoiceSummary> outstanding = readInvoices.outstandingOf(customer);
        List<InvoiceSummary> late =
                outstanding.stream().filter(InvoiceSummary::isPastDue).toList();
        LocalDate today = books.today();
        LocalDate newYear = today.withDayOfYear(1);
        return new Facts(
                open(outstanding),
                open(late),
                late.stream().mapToLong(InvoiceSummary::daysPastDue).max().orElse(0),
                readPayments.credit(customer),
                readVisits.lastAndNext(customer),
                revenue(customer, newYear, today),
                revenue(customer, newYear.minusYears(1), newYear.minusDays(1)));
    }

    private Money open(List<InvoiceSummary> invoices) {
        return Money.sum(
                books.currency(), invoices.stream().map(InvoiceSummary::open).toList());
    }

    private Money revenue(CustomerId customer, LocalDate from, LocalDate to) {
        return readBalances
                .ofCustomers(AccountRole.REVENUE, readCustomer.idsOf(customer), from, to)
                .negated();
    }
}
