package eaveside.invoicing;

import eaveside.customers.ReadCustomer;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.PaymentRow;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.NewDocument;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;

/** Records money received from a customer, or paid back to one. */
@Dependent
public class RecordPayment {
    private final EntityManager entities;
    private final PostDocument postDocument;
    private final ReadCustomer readCustomer;
    private final CustomerAccounts accounts;
    private final Books books;

    @Inject
    public RecordPayment(
            EntityManager entities,
            PostDocument postDocument,
            ReadCustomer readCustomer,
            CustomerAccounts accounts,
            Books books) {
        this.entities = entities;
        this.postDocument = postDocument;
        this.readCustomer = readCustomer;
        this.accounts = accounts;
        this.books = books;
    }

    /** How much of a payment an invoice takes. */
    public record Allocation(InvoiceId invoice, Money amount) {
        public Allocation {
            if (!amount.isPositive()) {
                throw new InvoiceRefusal.NotPositive("allocations");
            }
        }
    }

    /**
     * Money received.
     *
     * @param  id          made by the client; also the id of its document
     * @param  amount      above zero
     * @param  reference   such as a check's number
     * @param  allocations  what it pays; the rest stays with the customer as unapplied credit
     * @param  keepAsCredit that all of it becomes unapplied credit, where it pays nothing
     */
    public record Payment(
            PaymentId id,
            CustomerId customer,
            LocalDate date,
            Money amount,
            PaymentMethod method,
            String reference,
            List<Allocation> allocations,
            boolean keepAsCredit,
            UserId by) {
        public Payment {
            reference = Texts.optional("reference", reference, 200);
            allocations = List.copyOf(allocations);
            if (!amount.isPositive()) {
                throw new InvoiceRefusal.NotPositive("amount");
            }
            if (allocations.isEmpty() && !keepAsCredit) {
                throw new InvoiceRefusal.NothingChosen();
            }
            Money allocated = Money.sum(
                    amount.currency(),
                    allocations.stream().map(Allocation::amount).toList());
            if (allocated.compareTo(amount) > 0) {
                throw new InvoiceRefusal.AllocatedBeyondPayment(allocated.toString(), amount.toString());
            }
        }
    }

    /** Credit paid back to the customer. */
    public record Refund(
            PaymentId id,
            CustomerId customer,
            LocalDate date,
            Money amount,
            PaymentMethod method,
            String reference,
            UserId by) {
        public Refund {
            reference = Texts.optional("reference", reference, 200);
            if (!amount.isPositive()) {
                throw new InvoiceRefusal.NotPositive("amount");
            }
        }
    }

    /**
     * The same again is a retry. Refuses invoices of another customer, credited ones, later ones, and more
     * than is open on one.
     */
    @Transactional
    public Posted record(Payment payment) {
        Fingerprint fingerprint = Fingerprint.of(payment);
        DocumentId document = new DocumentId(payment.id().value());
        Optional<Posted> before = postDocument.alreadyPosted(document, fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        postDocument.openDay(payment.date());
        String name = readCustomer.customer(payment.customer()).name();
        accounts.lock(payment.customer());
        Map<InvoiceRow, Money> settled = allocated(payment);
        Money rest = payment.amount().minus(Money.sum(books.currency(), settled.values()));
        List<Entry> entries = new ArrayList<>();
        entries.add(Entry.debit(AccountRole.BANK, payment.amount()).of(payment.customer()));
        settled.forEach((invoice, amount) -> entries.add(Entry.credit(AccountRole.RECEIVABLES, amount)
                .of(payment.customer())
                .noted("On " + invoice.label())));
        if (rest.isPositive()) {
            entries.add(Entry.credit(AccountRole.CUSTOMER_CREDIT, rest).of(payment.customer()));
        }
        Posted posted = post(document, payment.date(), "Payment by " + name, payment.by(), fingerprint, entries);
        entities.persist(
                new PaymentRow(posted, payment.customer(), payment.amount(), payment.method(), payment.reference()));
        settled.forEach((invoice, amount) -> accounts.settle(posted, invoice, amount));
        accounts.move(payment.customer(), rest);
        return posted;
    }

    /** Pays credit back; the same again is a retry. Refuses more than the customer has, also on the day itself. */
    @Transactional
    public Posted refund(Refund refund) {
        Fingerprint fingerprint = Fingerprint.of(refund);
        DocumentId document = new DocumentId(refund.id().value());
        Optional<Posted> before = postDocument.alreadyPosted(document, fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        postDocument.openDay(refund.date());
        String name = readCustomer.customer(refund.customer()).name();
        accounts.lock(refund.customer());
        accounts.move(refund.customer(), refund.amount().negated());
        List<Entry> entries = List.of(
                Entry.debit(AccountRole.CUSTOMER_CREDIT, refund.amount()).of(refund.customer()),
                Entry.credit(AccountRole.BANK, refund.amount()).of(refund.customer()));
        Posted posted = post(document, refund.date(), "Paid back to " + name, refund.by(), fingerprint, entries);
        entities.persist(new PaymentRow(
                posted, refund.customer(), refund.amount().negated(), refund.method(), refund.reference()));
        accounts.requireCreditOn(refund.customer(), posted.postingDate());
        return posted;
    }

    private Map<InvoiceRow, Money> allocated(Payment payment) {
        Map<InvoiceId, InvoiceRow> rows = accounts.lockInvoices(
                payment.customer(),
                payment.allocations().stream().map(Allocation::invoice).toList());
        Map<InvoiceRow, Money> settled = new LinkedHashMap<>();
        for (Allocation allocation : payment.allocations()) {
            InvoiceRow invoice = rows.get(allocation.invoice());
            if (invoice == null || settled.putIfAbsent(invoice, allocation.amount()) != null) {
                throw new InvoiceRefusal.AllocatedTwice(allocation.invoice().toString());
            }
            if (allocation.amount().compareTo(invoice.open(books.currency())) > 0) {
                throw new InvoiceRefusal.OverAllocated(
                        invoice.label(), invoice.open(books.currency()).toString());
            }
        }
        return settled;
    }

    private Posted post(
            DocumentId id, LocalDate date, String summary, UserId by, Fingerprint fingerprint, List<Entry> entries) {
        return postDocument.post(NewDocument.of(id, DocumentType.PAYMENT, date, summary, by, fingerprint, entries));
    }
}
