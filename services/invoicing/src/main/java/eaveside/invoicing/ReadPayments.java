package eaveside.invoicing;

import eaveside.customers.ReadCustomer;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoicingQueries;
import eaveside.invoicing.internal.PaymentRow;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.PageKey;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.Texts;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentHead;
import eaveside.ledger.ReadLedger;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.hibernate.query.Page;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Reads payments, and customers' unapplied credit. */
@Shared
public class ReadPayments {
    private final EntityManager entities;
    private final InvoicingQueries queries;
    private final CustomerAccounts accounts;
    private final ReadCustomer readCustomer;
    private final ReadLedger readLedger;
    private final Books books;

    @Inject
    public ReadPayments(
            EntityManager entities,
            InvoicingQueries queries,
            CustomerAccounts accounts,
            ReadCustomer readCustomer,
            ReadLedger readLedger,
            Books books) {
        this.entities = entities;
        this.queries = queries;
        this.accounts = accounts;
        this.readCustomer = readCustomer;
        this.readLedger = readLedger;
        this.books = books;
    }

    /**
     * A payment.
     *
     * @param  amount     received above zero, paid back below
     * @param  reversedBy the document that took it back
     */
    public record Row(
            PaymentId id,
            long number,
            LocalDate date,
            CustomerId customer,
            String customerName,
            Money amount,
            PaymentMethod method,
            String reference,
            @Nullable DocumentId reversedBy) {}

    /** A payment with what it paid when it was recorded; the rest became the customer's credit. */
    public record View(Row payment, List<RecordPayment.Allocation> allocations, Money unapplied) {
        public View {
            allocations = List.copyOf(allocations);
        }
    }

    /** Refuses an unknown id. */
    @Transactional
    public View payment(PaymentId id) {
        PaymentRow payment = entities.find(PaymentRow.class, id.value());
        if (payment == null) {
            throw new KernelRefusal.NotFound("payment", id);
        }
        List<RecordPayment.Allocation> allocations = queries.settlementsBy(id.value()).stream()
                .map(s -> new RecordPayment.Allocation(s.invoice(), books.money(s.amount())))
                .toList();
        Row row = rows(List.of(payment)).getFirst();
        Money applied = Money.sum(
                books.currency(),
                allocations.stream().map(RecordPayment.Allocation::amount).toList());
        return new View(row, allocations, row.amount().minus(applied));
    }

    /** Newest first; of one customer, or of all where none is given. */
    @Transactional
    public Slice<Row> payments(@Nullable CustomerId customer, @Nullable String after, int size) {
        long before = PageKey.beforeNumber(after);
        Page page = Page.first(size + 1);
        List<PaymentRow> read = customer == null
                ? queries.paymentsBefore(before, page)
                : queries.paymentsOf(readCustomer.idsOf(customer), before, page);
        return Slice.of(rows(read), size, row -> Long.toString(row.number()));
    }

    /** A few payments for a search: that of the number, those whose reference begins so, and the newest of the customers. */
    @Transactional
    public List<Row> hits(String text, Collection<CustomerId> customers, int most) {
        Page page = Page.first(most);
        Stream<PaymentRow> numbered =
                text.matches("[0-9]{1,18}") ? queries.paymentsNumbered(Long.parseLong(text)).stream() : Stream.of();
        Stream<PaymentRow> referred = queries.paymentsReferred(Texts.beginning(text), page).stream();
        Stream<PaymentRow> theirs = customers.isEmpty()
                ? Stream.of()
                : queries.paymentsOf(readCustomer.idsOf(customers), PageKey.beforeNumber(null), page).stream();
        return rows(Stream.of(numbered, referred, theirs)
                .flatMap(Function.identity())
                .distinct()
                .limit(most)
                .toList());
    }

    /** What came in from the first to the last day, less what was paid back or taken back in them. */
    @Transactional
    public Money received(LocalDate from, LocalDate to) {
        return books.money(queries.received(from, to));
    }

    /** What the customer has paid and no invoice has taken. */
    @Transactional
    public Money credit(CustomerId customer) {
        return accounts.credit(customer);
    }

    private List<Row> rows(List<PaymentRow> payments) {
        CurrencyUnit currency = books.currency();
        Map<DocumentId, DocumentHead> heads =
                readLedger.heads(payments.stream().map(PaymentRow::document).toList()).stream()
                        .collect(Collectors.toMap(h -> h.posted().id(), Function.identity()));
        Map<CustomerId, String> customers = readCustomer.customerNames(
                payments.stream().map(PaymentRow::customer).collect(Collectors.toSet()));
        return payments.stream()
                .map(payment -> {
                    DocumentHead head = Objects.requireNonNull(heads.get(payment.document()));
                    return new Row(
                            new PaymentId(payment.document().value()),
                            payment.number(),
                            head.posted().postingDate(),
                            payment.customer(),
                            Objects.requireNonNull(customers.get(payment.customer())),
                            payment.amount(currency),
                            payment.method(),
                            payment.reference(),
                            head.reversedBy());
                })
                .toList();
    }
}
