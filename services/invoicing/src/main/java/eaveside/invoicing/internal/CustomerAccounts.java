package eaveside.invoicing.internal;

import eaveside.invoicing.InvoiceRefusal;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.ledger.Books;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;

/**
 * Moves customers' credit and invoices' open balances. Locks are taken after the period's and before the number
 * counter's: first the customer, so that no merge comes between, then the customer's account, then the invoices by id.
 * Merged customers have one account, that of the customer kept.
 */
@Dependent
public class CustomerAccounts {
    private final EntityManager entities;
    private final Books books;

    @Inject
    public CustomerAccounts(EntityManager entities, Books books) {
        this.entities = entities;
        this.books = books;
    }

    /** Locks the customer's account until the transaction ends. */
    public void lock(CustomerId customer) {
        entities.createNativeQuery("select id from customer where id = :id for share", UUID.class)
                .setParameter("id", customer.value())
                .getResultList();
        entities.createNativeQuery(
                        "insert into customer_account (customer_id) values (:id) on conflict (customer_id) do nothing")
                .setParameter("id", kept(customer))
                .executeUpdate();
        entities.refresh(row(customer), LockModeType.PESSIMISTIC_WRITE);
    }

    /** Asked of the database each time: another may have merged the customer since it was read. */
    private UUID kept(CustomerId customer) {
        List<?> kept = entities.createNativeQuery(
                        "select coalesce(merged_into, id) from customer where id = :id", UUID.class)
                .setParameter("id", customer.value())
                .getResultList();
        return kept.isEmpty() ? customer.value() : (UUID) kept.getFirst();
    }

    /** The invoices, locked by id; refuses an unknown one, and one of another customer. */
    public Map<InvoiceId, InvoiceRow> lockInvoices(CustomerId customer, Collection<InvoiceId> ids) {
        Map<InvoiceId, InvoiceRow> rows = new LinkedHashMap<>();
        List<InvoiceId> ordered = ids.stream()
                .distinct()
                .sorted((a, b) -> a.value().compareTo(b.value()))
                .toList();
        for (InvoiceId id : ordered) {
            InvoiceRow row = entities.find(InvoiceRow.class, id.value());
            if (row == null) {
                throw new InvoiceRefusal.NoSuchInvoice(id.toString());
            }
            entities.refresh(row, LockModeType.PESSIMISTIC_WRITE);
            if (!kept(row.customer()).equals(kept(customer))) {
                throw new InvoiceRefusal.OtherCustomer(row.label());
            }
            rows.put(id, row);
        }
        return rows;
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

    /** Notes what the document settles of the locked invoice, and lowers its open balance by it. */
    public void settle(DocumentId document, InvoiceRow invoice, Money amount) {
        entities.persist(new SettlementRow(document, invoice.id(), amount));
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
