package eaveside.invoicing;

import static eaveside.invoicing.InvoicingFixture.EXEMPT;
import static eaveside.invoicing.InvoicingFixture.OFFICE;
import static eaveside.invoicing.InvoicingFixture.rate;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.ledger.DocumentType;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.Duration;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class IssueInvoiceIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static InvoicingFixture fixture;
    private static CustomerId customer;

    @BeforeAll
    static void found() {
        fixture = new InvoicingFixture(bench, "USD", "8.25");
        customer = fixture.customer("Dormer Bakery");
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static Reversal reversal(IssuedInvoice invoice) {
        return new Reversal(
                DocumentId.next(), new DocumentId(invoice.id().value()), fixture.today(), "Wrong price", OFFICE);
    }

    @Test
    void issuing_twice_posts_once_and_the_draft_is_gone() {
        InvoiceDraft draft =
                fixture.draft(customer, fixture.content(fixture.line(fixture.windows, "2", "50", rate("8.25"))));
        IssueInvoice issue = bench.get(IssueInvoice.class);
        IssueInvoice.Issue command =
                new IssueInvoice.Issue(draft.id(), draft.version(), fixture.today(), CreditOnHand.KEEP, OFFICE);
        IssuedInvoice invoice = issue.issue(command);
        assertEquals(invoice, issue.issue(command));
        assertEquals(fixture.money("108.25"), invoice.open());
        assertEquals(invoice.date().plusDays(14), invoice.dueDate());
        assertEquals("Dormer Bakery", invoice.customerName());
        assertEquals(draft.totals(), invoice.totals());
        assertThrows(
                InvoiceRefusal.AlreadyIssued.class,
                () -> bench.get(ReadInvoices.class).draft(draft.id()));
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> issue.issue(new IssueInvoice.Issue(draft.id(), 7, fixture.today(), CreditOnHand.KEEP, OFFICE)));
    }

    @Test
    void the_same_click_twice_at_once_posts_once() throws Exception {
        InvoiceDraft draft = fixture.draft(customer, fixture.content(fixture.line(fixture.windows, "2", "50", EXEMPT)));
        IssueInvoice.Issue command =
                new IssueInvoice.Issue(draft.id(), draft.version(), fixture.today(), CreditOnHand.KEEP, OFFICE);
        List<Long> numbers =
                atOnce(6, () -> bench.get(IssueInvoice.class).issue(command).number());
        assertEquals(1, numbers.stream().distinct().count(), numbers.toString());
    }

    @Test
    void numbers_are_gapless_though_some_are_refused() throws Exception {
        List<Callable<Long>> clicks = new ArrayList<>();
        for (int i = 0; i < 12; i++) {
            InvoiceDraft draft = fixture.draft(
                    customer, fixture.content(fixture.line(fixture.windows, i % 3 == 0 ? "-1" : "1", "9", EXEMPT)));
            clicks.add(() -> {
                try {
                    return fixture.issue(draft).number();
                } catch (InvoiceRefusal.NegativeTotal e) {
                    return -1L;
                }
            });
        }
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            long refused = 0;
            for (Future<Long> number : pool.invokeAll(clicks)) {
                refused += number.get() < 0 ? 1 : 0;
            }
            assertEquals(4, refused);
        }
    }

    @Test
    void an_invoice_is_credited_in_full_once() {
        IssuedInvoice invoice = fixture.issued(customer, "80");
        Reversal reversal = reversal(invoice);
        CreditInvoice credit = bench.get(CreditInvoice.class);
        Posted note = credit.credit(reversal);
        assertEquals(DocumentType.CREDIT_MEMO, note.type());
        assertEquals(note, credit.credit(reversal), "a retry");
        assertThrows(InvoiceRefusal.AlreadyCredited.class, () -> credit.credit(reversal(invoice)));
        IssuedInvoice read = fixture.read(invoice);
        assertTrue(read.open().isZero());
        assertEquals(note.number(), Objects.requireNonNull(read.creditMemo()).number());
        assertEquals("Wrong price", read.creditMemo().reason());
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> credit.credit(
                        new Reversal(DocumentId.next(), DocumentId.next(), fixture.today(), "No such", OFFICE)));
    }

    @Test
    void crediting_a_paid_invoice_makes_the_money_the_customers_credit() {
        CustomerId payer = fixture.customer("Ridge Row 4");
        fixture.pay(payer, "30");
        InvoiceDraft draft = fixture.draft(
                payer,
                fixture.content(List.of(fixture.line(fixture.windows, "1", "100", EXEMPT)), List.of(), "25", "0"));
        IssuedInvoice invoice = fixture.issue(draft);
        assertEquals(fixture.money("75"), invoice.open());
        assertEquals(fixture.money("5"), fixture.credit(payer));
        fixture.pay(payer, "60", fixture.on(invoice, "60"));
        bench.get(CreditInvoice.class).credit(reversal(invoice));
        assertEquals(fixture.money("90"), fixture.credit(payer));
        IssuedInvoice read = fixture.read(invoice);
        assertEquals(4, read.settlements().size());
        assertNotNull(read.creditMemo());
    }

    @Test
    void prepaid_takes_no_more_than_the_customer_has() {
        CustomerId payer = fixture.customer("Ridge Row 5");
        fixture.pay(payer, "30");
        InvoiceDraft draft = fixture.draft(
                payer,
                fixture.content(List.of(fixture.line(fixture.windows, "1", "100", EXEMPT)), List.of(), "30.01", "0"));
        assertThrows(InvoiceRefusal.NotEnoughCredit.class, () -> fixture.issue(draft));
        assertEquals(fixture.money("30"), fixture.credit(payer));
    }

    @Test
    void the_date_on_the_paper_is_kept_or_refused() {
        IssuedInvoice today = fixture.issued(customer, "10");
        InvoiceDraft draft = fixture.draft(customer, fixture.content(fixture.line(fixture.windows, "1", "9", EXEMPT)));
        assertThrows(
                KernelRefusal.TooEarly.class,
                () -> bench.get(IssueInvoice.class)
                        .issue(new IssueInvoice.Issue(
                                draft.id(), draft.version(), today.date().minusDays(1), CreditOnHand.KEEP, OFFICE)));
        assertThrows(
                LedgerRefusal.DateInFuture.class,
                () -> bench.get(IssueInvoice.class)
                        .issue(new IssueInvoice.Issue(
                                draft.id(), draft.version(), today.date().plusDays(1), CreditOnHand.KEEP, OFFICE)));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(IssueInvoice.class)
                        .issue(new IssueInvoice.Issue(InvoiceId.next(), 0, today.date(), CreditOnHand.KEEP, OFFICE)));
    }

    @Test
    void an_issued_invoice_cannot_be_changed_not_even_by_the_application() {
        IssuedInvoice invoice = fixture.issued(customer, "10");
        for (String sql : List.of(
                "update invoice set gross = gross + 1",
                "update invoice_line set net = net + 1",
                "delete from invoice",
                "delete from settlement",
                "update payment set amount = 1")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
        AssertionError refused = assertThrows(
                AssertionError.class,
                () -> bench.execute(
                        "update invoice set note = 'x' where id = ?",
                        invoice.id().value()));
        assertTrue(String.valueOf(refused.getCause()).contains("never changes"));
        SQLException late = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "insert into invoice_tax (invoice_id, position, tax_category, tax_rate, taxable, tax)"
                                + " values (?, 9, 'Z', 0, 0, 0)",
                        invoice.id().value()));
        assertTrue(late.getMessage().contains("already issued"), late.getMessage());
    }

    @Test
    void lists_page_and_search_newest_first() {
        CustomerId finder = fixture.customer("Quoin Terrace Dental");
        List<IssuedInvoice> made = new ArrayList<>();
        for (int i = 1; i <= 5; i++) {
            made.add(fixture.issued(finder, "1" + i));
            fixture.issued(customer, "9");
        }
        ReadInvoices read = bench.get(ReadInvoices.class);
        var first = read.find("quoin dent", ReadInvoices.Which.ALL, null, null, 3);
        var second = read.find("quoin dent", ReadInvoices.Which.ALL, null, first.next(), 3);
        assertEquals(
                made.reversed().stream().map(IssuedInvoice::number).toList(),
                Stream.concat(first.rows().stream(), second.rows().stream())
                        .map(InvoiceSummary::number)
                        .toList());
        assertEquals(null, second.next());
        assertEquals(
                List.of(made.get(2).id()),
                read.find(String.valueOf(made.get(2).number()), ReadInvoices.Which.ALL, null, null, 3).rows().stream()
                        .map(InvoiceSummary::id)
                        .toList());
        assertEquals(
                List.of(),
                read.find("nobody of that name", ReadInvoices.Which.ALL, null, null, 3)
                        .rows());
        assertEquals(5, read.ofCustomer(finder, null, 10).rows().size());
        var all = read.find("", ReadInvoices.Which.ALL, null, null, 4);
        assertEquals(4, all.rows().size());
        assertNotNull(all.next());
        assertThrows(KernelRefusal.BadPageKey.class, () -> read.find("", ReadInvoices.Which.ALL, null, "x", 4));
        assertEquals(5, read.outstandingOf(finder).size());
        var open = read.outstanding(null, 2);
        var more = read.outstanding(open.next(), 2);
        assertTrue(
                open.rows().getLast().dueDate().compareTo(more.rows().getFirst().dueDate()) <= 0);
        assertEquals(
                List.of(),
                read.find("", ReadInvoices.Which.PAST_DUE, null, null, 50).rows());
        bench.clock().forward(Duration.ofDays(50));
        assertTrue(read.find("", ReadInvoices.Which.PAST_DUE, null, null, 50).rows().stream()
                .anyMatch(r -> r.customer().equals(finder)));
        assertEquals(read.aging().total(), read.aging().of(Aging.Bucket.DAYS_31_60), "all were due 36 days ago");
        bench.clock().forward(Duration.ofDays(-50));
    }

    private static <T> List<T> atOnce(int times, Callable<T> click) throws Exception {
        try (ExecutorService pool = Executors.newFixedThreadPool(times)) {
            List<T> answers = new ArrayList<>();
            for (Future<T> answer : pool.invokeAll(Collections.nCopies(times, click))) {
                answers.add(answer.get());
            }
            return answers;
        }
    }

    private static IssuedInvoice issue(InvoiceDraft draft, CreditOnHand credit) {
        return bench.get(IssueInvoice.class)
                .issue(new IssueInvoice.Issue(draft.id(), draft.version(), fixture.today(), credit, OFFICE));
    }

    private static InvoiceDraft draftOf(CustomerId payer, String amount) {
        return fixture.draft(payer, fixture.content(fixture.line(fixture.windows, "1", amount, EXEMPT)));
    }

    @Test
    void credit_on_hand_is_asked_about_and_applied_up_to_what_is_due() {
        CustomerId payer = fixture.customer("Ridge Row 6");
        fixture.pay(payer, "130");
        InvoiceDraft first = draftOf(payer, "100");
        InvoiceRefusal.CreditNotDecided asked =
                assertThrows(InvoiceRefusal.CreditNotDecided.class, () -> issue(first, CreditOnHand.ASK));
        assertEquals(List.of("credit"), asked.fields());
        assertTrue(asked.text().contains("130.00"), asked.text());
        IssuedInvoice paid = issue(first, CreditOnHand.APPLY);
        assertEquals(paid, issue(first, CreditOnHand.APPLY), "a retry");
        assertEquals(fixture.money("0"), paid.open());
        assertEquals(fixture.money("100"), paid.totals().prepaid());
        IssuedInvoice part = issue(draftOf(payer, "50"), CreditOnHand.APPLY);
        assertEquals(fixture.money("20"), part.open());
        assertEquals(fixture.money("0"), fixture.credit(payer));
        assertEquals(
                fixture.money("7"), issue(draftOf(payer, "7"), CreditOnHand.ASK).open(), "nothing to ask about");
    }

    @Test
    void an_invoice_written_again_takes_the_money_that_was_paid_on_the_first() {
        CustomerId payer = fixture.customer("Ridge Row 7");
        IssuedInvoice first = fixture.issued(payer, "100");
        fixture.pay(payer, "100", fixture.on(first, "100"));
        bench.get(CreditInvoice.class).credit(reversal(first));
        assertEquals(fixture.money("100"), fixture.credit(payer));
        InvoiceDraft again = draftOf(payer, "90");
        assertThrows(InvoiceRefusal.CreditNotDecided.class, () -> issue(again, CreditOnHand.ASK));
        assertEquals(fixture.money("0"), issue(again, CreditOnHand.APPLY).open());
        assertEquals(fixture.money("10"), fixture.credit(payer));
    }

    @Test
    void credit_that_comes_later_is_not_applied_to_an_earlier_date() {
        bench.clock().forward(Duration.ofDays(3));
        CustomerId payer = fixture.customer("Ridge Row 8");
        LocalDate yesterday = fixture.today().minusDays(1);
        fixture.pay(payer, "30");
        InvoiceDraft draft = draftOf(payer, "100");
        IssuedInvoice invoice = bench.get(IssueInvoice.class)
                .issue(new IssueInvoice.Issue(draft.id(), draft.version(), yesterday, CreditOnHand.APPLY, OFFICE));
        assertEquals(fixture.money("100"), invoice.open());
        assertEquals(fixture.money("30"), fixture.credit(payer));
    }

    @Test
    void rounding_is_owed_posted_and_credited_like_the_rest() {
        CustomerId payer = fixture.customer("Ridge Row 9");
        Draft content =
                fixture.content(List.of(fixture.line(fixture.windows, "1", "99.98", EXEMPT)), List.of(), "0", "0.02");
        InvoiceDraft draft = fixture.draft(payer, content);
        assertEquals(
                InvoicingFixture.version(draft, content),
                bench.get(ReadInvoices.class).draft(draft.id()).content());
        IssuedInvoice invoice = fixture.issue(draft);
        assertEquals(fixture.money("0.02"), invoice.totals().rounding());
        assertEquals(fixture.money("99.98"), invoice.totals().gross());
        assertEquals(fixture.money("100"), invoice.open());
        bench.verifyBooks();
        fixture.pay(payer, "100", fixture.on(invoice, "100"));
        bench.get(CreditInvoice.class).credit(reversal(invoice));
        assertEquals(fixture.money("100"), fixture.credit(payer));
    }

    @Test
    void a_draft_and_what_is_computed_refuse_the_same() {
        assertThrows(KernelRefusal.Negative.class, () -> content("-0.01", "0"));
        assertThrows(KernelRefusal.Negative.class, () -> input("-0.01", "0"));
        for (String rounding : List.of("1.01", "-1.01")) {
            assertThrows(InvoiceRefusal.RoundingTooLarge.class, () -> content("0", rounding));
            assertThrows(InvoiceRefusal.RoundingTooLarge.class, () -> input("0", rounding));
        }
        input("0", "-1");
        assertThrows(InvoiceRefusal.RateNotOfCategory.class, () -> TaxRate.standard("100.01"));
        TaxRate.standard("100");
    }

    private static Draft content(String prepaid, String rounding) {
        return fixture.content(List.of(fixture.line(fixture.windows, "1", "1", EXEMPT)), List.of(), prepaid, rounding);
    }

    private static InvoiceInput input(String prepaid, String rounding) {
        return new InvoiceInput(
                fixture.currency,
                List.of(new InvoiceInput.Line(
                        Quantity.of(1, Unit.PIECE), fixture.price("1", "1"), List.of(), TaxRate.standard("8.25"))),
                List.of(),
                fixture.money(prepaid),
                fixture.money(rounding));
    }
}
