package eaveside.invoicing;

import static eaveside.invoicing.InvoicingFixture.OFFICE;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.PaymentId;
import eaveside.kernel.Refusal;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.testing.Bench;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class PaymentsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static InvoicingFixture fixture;
    private static int customers;

    private CustomerId customer;
    private IssuedInvoice invoice;

    @BeforeAll
    static void found() {
        fixture = new InvoicingFixture(bench, "USD", "8.25");
    }

    @BeforeEach
    void an_invoice_of_a_hundred() {
        customer = fixture.customer("Payer " + ++customers);
        invoice = fixture.issued(customer, "100");
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static Money usd(String amount) {
        return fixture.money(amount);
    }

    private Money open() {
        return fixture.read(invoice).open();
    }

    private static Reversal reversal(Posted posted) {
        return new Reversal(DocumentId.next(), posted.id(), fixture.today(), "Bounced", OFFICE);
    }

    private ApplyCredit.Apply apply(String amount) {
        return new ApplyCredit.Apply(DocumentId.next(), invoice.id(), usd(amount), fixture.today(), OFFICE);
    }

    @Test
    void a_part_then_the_rest() {
        fixture.pay(customer, "30", fixture.on(invoice, "30"));
        assertEquals(usd("70"), open());
        fixture.pay(customer, "70", fixture.on(invoice, "70"));
        assertEquals(usd("0"), open());
        assertEquals(usd("0"), fixture.credit(customer));
        assertThrows(InvoiceRefusal.OverAllocated.class, () -> fixture.pay(customer, "1", fixture.on(invoice, "0.01")));
    }

    @Test
    void what_is_paid_too_much_stays_as_credit_and_can_be_applied_later() {
        fixture.pay(customer, "140", fixture.on(invoice, "100"));
        assertEquals(usd("40"), fixture.credit(customer));
        invoice = fixture.issued(customer, "60");
        ApplyCredit applyCredit = bench.get(ApplyCredit.class);
        assertThrows(InvoiceRefusal.NotEnoughCredit.class, () -> applyCredit.apply(apply("40.01")));
        assertThrows(InvoiceRefusal.OverAllocated.class, () -> applyCredit.apply(apply("60.01")));
        ApplyCredit.Apply apply = apply("25");
        Posted posted = applyCredit.apply(apply);
        assertEquals(posted, applyCredit.apply(apply), "a retry");
        assertEquals(usd("35"), open());
        assertEquals(usd("15"), fixture.credit(customer));
        Reversal undo = reversal(posted);
        Posted undone = applyCredit.undo(undo);
        assertEquals(undone, applyCredit.undo(undo), "a retry");
        assertEquals(usd("60"), open());
        assertEquals(usd("40"), fixture.credit(customer));
        assertThrows(LedgerRefusal.AlreadyReversed.class, () -> applyCredit.undo(reversal(posted)));
        assertThrows(KernelRefusal.NotFound.class, () -> applyCredit.undo(reversal(undone)));
    }

    @Test
    void one_payment_may_settle_several_invoices() {
        IssuedInvoice second = fixture.issued(customer, "50");
        Posted posted = fixture.pay(customer, "160", fixture.on(second, "50"), fixture.on(invoice, "80"));
        ReadPayments.View view =
                bench.get(ReadPayments.class).payment(new PaymentId(posted.id().value()));
        assertEquals(2, view.allocations().size());
        assertEquals(usd("30"), view.unapplied());
        assertNull(view.payment().reversedBy());
        assertThrows(
                KernelRefusal.Twice.class,
                () -> fixture.pay(customer, "10", fixture.on(invoice, "1"), fixture.on(invoice, "1")));
    }

    @Test
    void a_payment_sent_again_is_a_retry() {
        RecordPayment.Payment payment = new RecordPayment.Payment(
                PaymentId.next(),
                customer,
                fixture.today(),
                usd("20"),
                PaymentMethod.CASH,
                "",
                List.of(fixture.on(invoice, "20")),
                false,
                OFFICE);
        RecordPayment record = bench.get(RecordPayment.class);
        assertEquals(record.record(payment), record.record(payment));
        assertEquals(usd("80"), open());
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> record.record(new RecordPayment.Payment(
                        payment.id(),
                        customer,
                        fixture.today(),
                        usd("21"),
                        PaymentMethod.CASH,
                        "",
                        List.of(),
                        true,
                        OFFICE)));
    }

    @Test
    void a_payment_is_reversed_in_full_once() {
        Posted posted = fixture.pay(customer, "120", fixture.on(invoice, "100"));
        ReversePayment reverse = bench.get(ReversePayment.class);
        Reversal reversal = reversal(posted);
        Posted reversed = reverse.reverse(reversal);
        assertEquals(reversed, reverse.reverse(reversal), "a retry");
        assertEquals(usd("100"), open());
        assertEquals(usd("0"), fixture.credit(customer));
        // Refused for the credit it would take again, or for having been reversed; never twice.
        fixture.pay(customer, "500");
        assertThrows(LedgerRefusal.AlreadyReversed.class, () -> reverse.reverse(reversal(posted)));
        assertEquals(
                reversed.id(),
                bench.get(ReadPayments.class)
                        .payment(new PaymentId(posted.id().value()))
                        .payment()
                        .reversedBy());
        assertThrows(KernelRefusal.NotFound.class, () -> reverse.reverse(reversal(reversed)));
    }

    @Test
    void a_payment_whose_credit_was_used_is_not_reversed_before_that_is_freed() {
        Posted posted = fixture.pay(customer, "100", fixture.on(invoice, "60"));
        Posted applied = bench.get(ApplyCredit.class).apply(apply("40"));
        ReversePayment reverse = bench.get(ReversePayment.class);
        assertThrows(InvoiceRefusal.CreditUsed.class, () -> reverse.reverse(reversal(posted)));
        bench.get(ApplyCredit.class).undo(reversal(applied));
        reverse.reverse(reversal(posted));
        assertEquals(usd("100"), open());
    }

    @Test
    void a_payment_of_a_credited_invoice_can_still_be_reversed() {
        Posted posted = fixture.pay(customer, "70", fixture.on(invoice, "60"));
        bench.get(CreditInvoice.class)
                .credit(new Reversal(
                        DocumentId.next(),
                        new DocumentId(invoice.id().value()),
                        fixture.today(),
                        "Wrong customer",
                        OFFICE));
        assertEquals(usd("70"), fixture.credit(customer));
        bench.get(ReversePayment.class).reverse(reversal(posted));
        assertEquals(usd("0"), fixture.credit(customer));
        assertEquals(usd("0"), open());
    }

    @Test
    void credit_is_paid_back_up_to_what_is_there() {
        fixture.pay(customer, "130", fixture.on(invoice, "100"));
        RecordPayment record = bench.get(RecordPayment.class);
        RecordPayment.Refund refund = new RecordPayment.Refund(
                PaymentId.next(), customer, fixture.today(), usd("30"), PaymentMethod.BANK_TRANSFER, "", OFFICE);
        Posted posted = record.refund(refund);
        assertEquals(posted, record.refund(refund), "a retry");
        assertEquals(usd("0"), fixture.credit(customer));
        assertThrows(
                InvoiceRefusal.NotEnoughCredit.class,
                () -> record.refund(new RecordPayment.Refund(
                        PaymentId.next(), customer, fixture.today(), usd("0.01"), PaymentMethod.CASH, "", OFFICE)));
        bench.get(ReversePayment.class).reverse(reversal(posted));
        assertEquals(usd("30"), fixture.credit(customer));
        assertEquals(
                List.of(usd("-30"), usd("130")),
                bench.get(ReadPayments.class).payments(customer, null, 10).rows().stream()
                        .map(ReadPayments.Row::amount)
                        .toList());
    }

    @Test
    void money_goes_to_the_payers_own_invoices_in_the_books_currency() {
        CustomerId other = fixture.customer("Other " + customers);
        assertThrows(KernelRefusal.NotFound.class, () -> fixture.pay(CustomerId.next(), "10"));
        Refusal notTheirs = assertThrows(
                InvoiceRefusal.OtherCustomer.class, () -> fixture.pay(other, "10", fixture.on(invoice, "10")));
        assertEquals(List.of("allocations[0].invoice"), notTheirs.fields());
        assertThrows(
                InvoiceRefusal.AllocatedBeyondPayment.class,
                () -> fixture.pay(customer, "10", fixture.on(invoice, "10.01")));
        assertThrows(KernelRefusal.NotPositive.class, () -> fixture.pay(customer, "-10"));
        assertThrows(
                KernelRefusal.UnlikeCurrencies.class,
                () -> bench.get(RecordPayment.class)
                        .record(new RecordPayment.Payment(
                                PaymentId.next(),
                                customer,
                                fixture.today(),
                                Money.of(CurrencyUnit.EUR, "10"),
                                PaymentMethod.CASH,
                                "",
                                List.of(),
                                true,
                                OFFICE)));
        assertEquals(usd("100"), open());
    }

    @Test
    void two_payments_at_once_cannot_both_take_what_is_open() throws Exception {
        List<Callable<Boolean>> clicks = IntStream.range(0, 6)
                .<Callable<Boolean>>mapToObj(i -> () -> {
                    try {
                        fixture.pay(customer, "40", fixture.on(invoice, "40"));
                        return true;
                    } catch (InvoiceRefusal.OverAllocated e) {
                        return false;
                    }
                })
                .toList();
        int taken = 0;
        try (ExecutorService pool = Executors.newFixedThreadPool(6)) {
            for (Future<Boolean> answer : pool.invokeAll(clicks)) {
                taken += answer.get() ? 1 : 0;
            }
        }
        assertEquals(2, taken);
        assertEquals(usd("20"), open());
    }

    @Test
    void money_becomes_credit_on_purpose_only() {
        RecordPayment record = bench.get(RecordPayment.class);
        assertThrows(InvoiceRefusal.NothingChosen.class, () -> record.record(payment(fixture.today(), "100", false)));
        assertEquals(usd("100"), open());
        assertEquals(usd("0"), fixture.credit(customer));
        record.record(payment(fixture.today(), "100", true));
        assertEquals(usd("100"), fixture.credit(customer));
        Refusal denied = assertThrows(
                InvoiceRefusal.RestNotDecided.class,
                () -> payment(fixture.today(), "10", false, fixture.on(invoice, "4")));
        assertEquals(List.of("keepAsCredit"), denied.fields());
        record.record(payment(fixture.today(), "10", null, fixture.on(invoice, "4")));
        assertEquals(usd("106"), fixture.credit(customer), "the two amounts say it");
    }

    private RecordPayment.Payment payment(
            LocalDate date, String amount, @Nullable Boolean keepAsCredit, RecordPayment.Allocation... allocations) {
        return new RecordPayment.Payment(
                PaymentId.next(),
                customer,
                date,
                usd(amount),
                PaymentMethod.CHECK,
                "",
                List.of(allocations),
                keepAsCredit,
                OFFICE);
    }

    @Test
    void nothing_pays_an_invoice_before_its_date() {
        RecordPayment record = bench.get(RecordPayment.class);
        laterThanAnyPayment();
        invoice = fixture.issued(customer, "50");
        LocalDate before = fixture.today().minusDays(1);
        LedgerRefusal.BeforeBasis refused = assertThrows(
                LedgerRefusal.BeforeBasis.class,
                () -> record.record(payment(before, "50", false, fixture.on(invoice, "50"))));
        assertEquals(List.of("date"), refused.fields());
        assertEquals(usd("50"), open(), "nothing is half-written");
        assertEquals(usd("0"), fixture.credit(customer));
        // A deposit may come before; it pays the invoice from the invoice's own date on.
        record.record(payment(before, "50", true));
        ApplyCredit apply = bench.get(ApplyCredit.class);
        assertThrows(
                LedgerRefusal.BeforeBasis.class,
                () -> apply.apply(new ApplyCredit.Apply(DocumentId.next(), invoice.id(), usd("50"), before, OFFICE)));
        apply.apply(apply("50"));
        assertEquals(usd("0"), open());
    }

    @Test
    void credit_is_not_used_before_it_is_there() {
        laterThanAnyPayment();
        invoice = fixture.issued(customer, "50");
        LocalDate issued = fixture.today();
        bench.clock().forward(Duration.ofDays(5));
        RecordPayment record = bench.get(RecordPayment.class);
        record.record(payment(fixture.today(), "80", true));
        InvoiceRefusal.BeforeCredit refused = assertThrows(
                InvoiceRefusal.BeforeCredit.class,
                () -> bench.get(ApplyCredit.class)
                        .apply(new ApplyCredit.Apply(
                                DocumentId.next(), invoice.id(), usd("50"), issued.plusDays(4), OFFICE)));
        assertEquals(List.of("date"), refused.fields());
        assertEquals(usd("80"), fixture.credit(customer), "nothing is half-written");
        assertEquals(usd("50"), open());
        bench.get(ApplyCredit.class).apply(apply("50"));
        assertEquals(usd("30"), fixture.credit(customer));
    }

    /** So that no date below is moved to the last one of the payments' series. */
    private static void laterThanAnyPayment() {
        bench.clock().forward(Duration.ofDays(3));
    }

    @Test
    void the_database_keeps_dates_in_order_by_itself() {
        laterThanAnyPayment();
        RecordPayment record = bench.get(RecordPayment.class);
        Posted early = record.record(payment(fixture.today().minusDays(1), "5", true));
        IssuedInvoice later = fixture.issued(customer, "10");
        // The document is made part of this transaction, as a careless program might have it.
        AssertionError settled = assertThrows(
                AssertionError.class,
                () -> bench.execute("do $$ begin alter table settlement disable trigger settlement_with_document; "
                        + "insert into settlement (document_id, invoice_id, amount) values ('" + early.id() + "', '"
                        + later.id() + "', 5); end $$"));
        assertTrue(String.valueOf(settled.getCause()).contains("counts before invoice"), settled.toString());
    }
}
