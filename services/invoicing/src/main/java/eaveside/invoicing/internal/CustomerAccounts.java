package eaveside.invoicing.internal;

import eaveside.invoicing.InvoiceRefusal;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.Lock;
import eaveside.ledger.Posted;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.LocalDate;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Supplier;

/**
 * Moves customers' credit and invoices' open balances. Locks are taken after the period's and before the number
 * counter's: first the customer, so that no merge comes between, then the customer's account, then the invoices by id.
 * Merged customers have one account, that of the customer kept.
 */
@Shared
public class CustomerAccounts {
    private final EntityManager entities;
    private final InvoicingQueries queries;
    private final Books books;

    @Inject
    public CustomerAccounts(EntityManager entities, InvoicingQueries queries, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
    }

    /** Locks the customer's account until the transaction ends. */
    public void lock(CustomerId customer) {
        boolean known = !entities.createNativeQuery("select id from customer where id = :id for share", UUID.class)
                .setParameter("id", customer.value())
                .getResultList()
                .isEmpty();
        if (!known) {
            return; // there is nothing to keep, and the decision refuses it by name
        }
        entities.createNativeQuery(
                        "insert into customer_account (customer_id) values (:id) on conflict (customer_id) do nothing")
                .setParameter("id", kept(customer))
                .executeUpdate();
        entities.refresh(row(customer), LockModeType.PESSIMISTIC_WRITE);
    }

    /** The same as a posting's lock. */
    public Lock lockOf(Supplier<CustomerId> customer) {
        return Lock.of(Lock.Rank.CUSTOMER, () -> lock(customer.get()));
    }

    /** Asked of the database each time: another may have merged the customer since it was read. */
    private UUID kept(CustomerId customer) {
        List<?> kept = entities.createNativeQuery(
                        "select coalesce(merged_into, id) from customer where id = :id", UUID.class)
                .setParameter("id", customer.value())
                .getResultList();
        return kept.isEmpty() ? customer.value() : (UUID) kept.getFirst();
    }

    /** The invoices, locked by id; refuses an unknown one. */
    public Map<InvoiceId, InvoiceRow> lockInvoices(Collection<InvoiceId> ids) {
        Map<InvoiceId, InvoiceRow> rows = new LinkedHashMap<>();
        List<InvoiceId> ordered = ids.stream()
                .distinct()
                .sorted((a, b) -> a.value().compareTo(b.value()))
                .toList();
        for (InvoiceId id : ordered) {
            InvoiceRow row = entities.find(InvoiceRow.class, id.value());
            if (row == null) {
                throw new KernelRefusal.NotFound("invoice", id);
            }
            entities.refresh(row, LockModeType.PESSIMISTIC_WRITE);
            rows.put(id, row);
        }
        return rows;
    }

    /** Refuses an invoice of another customer, be it that the two were merged. */
    public void requireOwn(CustomerId customer, InvoiceRow invoice) {
        if (!kept(invoice.customer()).equals(kept(customer))) {
            throw new InvoiceRefusal.OtherCustomer(invoice.label());
        }
    }

    /** What the customer has to the good and no invoice has taken. */
    public Money credit(CustomerId customer) {
        CustomerAccountRow row = entities.find(CustomerAccountRow.class, kept(customer));
        return row == null ? books.zero() : books.money(row.credit);
    }

    /** Adds to the locked account, or takes from it; refuses to take more than is there. */
    public void move(CustomerId customer, Money amount) {
        Money after = credit(customer).plus(amount);
        if (after.isNegative()) {
            throw new InvoiceRefusal.NotEnoughCredit(
                    amount.negated().toString(), credit(customer).toString());
        }
        row(customer).credit = after.amount();
    }

    /**
     * How much of the credit can be used on the day: what the ledger shows then, less what is used of it later. The
     * caller's transaction sees its own postings.
     */
    public Money creditOn(CustomerId customer, LocalDate day) {
        Money least = books.money(queries.leastCreditFrom(customer.value(), day));
        return least.isNegative() ? books.zero() : least;
    }

    /** Refuses what has just been posted where it uses credit before that came in. */
    public void requireCreditOn(CustomerId customer, LocalDate day) {
        Money least = books.money(queries.leastCreditFrom(customer.value(), day));
        if (least.isNegative()) {
            throw new InvoiceRefusal.BeforeCredit(day, least.negated().toString());
        }
    }

    /**
     * Notes what the document settles of the locked invoice, and lowers its open balance by it; refuses a document that
     * counts on a day before the invoice's.
     */
    public void settle(Posted document, InvoiceRow invoice, Money amount) {
        if (document.postingDate().isBefore(invoice.date())) {
            throw LedgerRefusal.BeforeBasis.counting(document.postingDate(), invoice.label(), invoice.date());
        }
        entities.persist(new SettlementRow(document.id(), invoice.id(), amount));
        invoice.settle(amount);
    }

    /** Notes the credit that an invoice took when it was issued: its open balance began without it. */
    public void settleAtIssue(DocumentId document, InvoiceRow invoice, Money amount) {
        entities.persist(new SettlementRow(document, invoice.id(), amount));
    }

    private CustomerAccountRow row(CustomerId customer) {
        CustomerAccountRow row = entities.find(CustomerAccountRow.class, kept(customer));
        if (row == null) {
            throw new IllegalStateException("the account of customer " + customer + " is locked before it moves");
        }
        return row;
    }
}
