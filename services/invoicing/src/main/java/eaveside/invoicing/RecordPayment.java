package eaveside.invoicing;

import eaveside.customers.ReadCustomer;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.PaymentRow;
import eaveside.kernel.Check;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Default;
import eaveside.kernel.Elements;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.Lock;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Records money received from a customer, or paid back to one. */
@Shared
public class RecordPayment {
    private final EntityManager entities;
    private final Posting posting;
    private final ReadCustomer readCustomer;
    private final CustomerAccounts accounts;
    private final Books books;

    @Inject
    public RecordPayment(
            EntityManager entities,
            Posting posting,
            ReadCustomer readCustomer,
            CustomerAccounts accounts,
            Books books) {
        this.entities = entities;
        this.posting = posting;
        this.readCustomer = readCustomer;
        this.accounts = accounts;
        this.books = books;
    }

    /** How much of a payment an invoice takes. */
    public record Allocation(InvoiceId invoice, Money amount) {
        public Allocation {
            if (!amount.isPositive()) {
                throw new KernelRefusal.NotPositive("amount");
            }
        }
    }

    /**
     * Money received.
     *
     * @param  id          made by the client; also the id of its document
     * @param  amount      above zero
     * @param  reference   such as a check's number
     * @param  allocations  what it pays, each invoice once; the rest stays with the customer as unapplied credit
     * @param  keepAsCredit whether what pays nothing becomes unapplied credit: must be said where nothing is paid, and where
     *                     it is denied nothing may be left; null where the amounts say it, as a script's do
     */
    public record Payment(
            PaymentId id,
            CustomerId customer,
            @Nullable LocalDate date,
            Money amount,
            PaymentMethod method,
            @Default String reference,
            List<Allocation> allocations,
            @Nullable Boolean keepAsCredit,
            UserId by)
            implements Postable {
        public Payment {
            Check check = new Check();
            reference = check.optional("reference", reference, 200);
            allocations = List.copyOf(allocations);
            check.that(amount.isPositive(), () -> new KernelRefusal.NotPositive("amount"));
            check.that(!allocations.isEmpty() || Boolean.TRUE.equals(keepAsCredit), InvoiceRefusal.NothingChosen::new);
            List<Allocation> each = allocations;
            check.passes(() -> Elements.requireDistinct("allocations", each, "invoice", Allocation::invoice));
            CurrencyUnit currency = amount.currency();
            for (int i = 0; i < allocations.size(); i++) {
                allocations.get(i).amount().in(currency, "amount", "allocations[" + i + "].amount");
            }
            Money allocated = Money.sum(
                    currency, allocations.stream().map(Allocation::amount).toList());
            check.that(
                    !amount.isPositive() || allocated.compareTo(amount) <= 0,
                    () -> new InvoiceRefusal.AllocatedBeyondPayment(allocated.toString(), amount.toString()));
            Money rest = amount.minus(allocated);
            check.that(
                    allocations.isEmpty() || !rest.isPositive() || !Boolean.FALSE.equals(keepAsCredit),
                    () -> new InvoiceRefusal.RestNotDecided(rest.toString()));
            check.done();
        }

        /** What is left for the customer's credit. */
        public Money rest() {
            return amount.minus(Money.sum(
                    amount.currency(),
                    allocations.stream().map(Allocation::amount).toList()));
        }
    }

    /** Credit paid back to the customer. */
    public record Refund(
            PaymentId id,
            CustomerId customer,
            @Nullable LocalDate date,
            Money amount,
            PaymentMethod method,
            @Default String reference,
            UserId by)
            implements Postable {
        public Refund {
            Check check = new Check();
            reference = check.optional("reference", reference, 200);
            check.that(amount.isPositive(), () -> new KernelRefusal.NotPositive("amount"));
            check.done();
        }
    }

    /** How an amount spreads over a customer's open invoices, those due first at first. */
    public static List<Allocation> oldestFirst(Money amount, List<InvoiceSummary> open) {
        List<Allocation> allocations = new ArrayList<>();
        Money left = amount;
        for (InvoiceSummary invoice : open) {
            Money takes = left.compareTo(invoice.open()) < 0 ? left : invoice.open();
            if (takes.isPositive()) {
                allocations.add(new Allocation(invoice.id(), takes));
                left = left.minus(takes);
            }
        }
        return allocations;
    }

    /**
     * The same again is a retry. Refuses invoices of another customer, credited ones, later ones, and more
     * than is open on one.
     */
    @Transactional
    public Posted record(Payment payment) {
        List<Lock> locks = List.of(accounts.lockOf(payment::customer));
        return posting.post("payment.record", payment, locks, day -> {
            books.ours(payment.amount(), "amount");
            String name = readCustomer.customer(payment.customer()).name();
            Map<InvoiceRow, Money> settled = allocated(payment);
            Money rest = payment.rest();
            List<Entry> entries = new ArrayList<>();
            entries.add(Entry.debit(AccountRole.BANK, payment.amount()).of(payment.customer()));
            settled.forEach((invoice, amount) -> entries.add(Entry.credit(AccountRole.RECEIVABLES, amount)
                    .of(payment.customer())
                    .noted("On " + invoice.label())));
            if (rest.isPositive()) {
                entries.add(Entry.credit(AccountRole.CUSTOMER_CREDIT, rest).of(payment.customer()));
            }
            return Decided.document(DocumentType.PAYMENT, "Payment by " + name, entries)
                    .then(posted -> {
                        entities.persist(new PaymentRow(
                                posted, payment.customer(), payment.amount(), payment.method(), payment.reference()));
                        settled.forEach((invoice, amount) -> accounts.settle(posted, invoice, amount));
                        accounts.move(payment.customer(), rest);
                    });
        });
    }

    /** Pays credit back; the same again is a retry. Refuses more than the customer has, also on the day itself. */
    @Transactional
    public Posted refund(Refund refund) {
        List<Lock> locks = List.of(accounts.lockOf(refund::customer));
        return posting.post("payment.refund", refund, locks, day -> {
            books.ours(refund.amount(), "amount");
            String name = readCustomer.customer(refund.customer()).name();
            accounts.move(refund.customer(), refund.amount().negated());
            List<Entry> entries = List.of(
                    Entry.debit(AccountRole.CUSTOMER_CREDIT, refund.amount()).of(refund.customer()),
                    Entry.credit(AccountRole.BANK, refund.amount()).of(refund.customer()));
            return Decided.document(DocumentType.PAYMENT, "Refund to " + name, entries)
                    .then(posted -> {
                        entities.persist(new PaymentRow(
                                posted,
                                refund.customer(),
                                refund.amount().negated(),
                                refund.method(),
                                refund.reference()));
                        accounts.requireCreditOn(refund.customer(), posted.postingDate());
                    });
        });
    }

    private Map<InvoiceRow, Money> allocated(Payment payment) {
        Map<InvoiceId, InvoiceRow> rows = accounts.lockInvoices(
                payment.allocations().stream().map(Allocation::invoice).toList());
        Map<InvoiceRow, Money> settled = new LinkedHashMap<>();
        Elements.each("allocations", payment.allocations(), (allocation, i) -> {
            InvoiceRow invoice = Objects.requireNonNull(rows.get(allocation.invoice()), "locked above");
            accounts.requireOwn(payment.customer(), invoice);
            settled.put(invoice, allocation.amount());
            if (allocation.amount().compareTo(invoice.open(books.currency())) > 0) {
                throw new InvoiceRefusal.OverAllocated(
                        "amount",
                        invoice.label(),
                        invoice.open(books.currency()).toString());
            }
        });
        return settled;
    }
}
