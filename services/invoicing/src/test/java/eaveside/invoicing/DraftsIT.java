package eaveside.invoicing;

import static eaveside.invoicing.InvoicingFixture.DAY;
import static eaveside.invoicing.InvoicingFixture.EXEMPT;
import static eaveside.invoicing.InvoicingFixture.OFFICE;
import static eaveside.invoicing.InvoicingFixture.rate;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.catalog.TaxCode;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Records;
import eaveside.kernel.ServiceLineId;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class DraftsIT {
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

    private static Draft content(String price) {
        return new Draft(
                InvoiceId.next(),
                0,
                customer,
                DAY,
                "PO 7",
                "Thank you",
                List.of(
                        fixture.line(
                                fixture.windows,
                                "22",
                                price,
                                rate("8.25"),
                                Adjustment.allowance(fixture.money("3.00"), "Two panes cracked")),
                        fixture.line(fixture.arrays, "48", "4.75", EXEMPT)),
                List.of(new Draft.OnDocument(Adjustment.allowance(fixture.money("10.00"), "Season"), rate("8.25"))),
                null,
                null);
    }

    private static Draft of(InvoiceId id, Draft content) {
        return Records.with(content, "id", id);
    }

    @Test
    void a_draft_reads_as_it_was_written() {
        InvoiceDraft made = fixture.draft(customer, content("6.50"));
        InvoiceDraft read = bench.get(ReadInvoices.class).draft(made.id());
        assertEquals(made, read);
        assertEquals(fixture.money("358.00"), read.totals().net()); // 143 − 3 + 228 − 10
        assertEquals(fixture.money("10.73"), read.totals().tax()); // 130 × 8.25 % = 10.725
    }

    @Test
    void making_a_draft_again_is_a_retry_and_other_content_a_conflict() {
        Draft content = content("6.50");
        DraftInvoice drafts = bench.get(DraftInvoice.class);
        InvoiceDraft first = drafts.save(content, OFFICE);
        assertEquals(1, first.version(), "0 means new");
        assertEquals(first, drafts.save(content, OFFICE));
        Draft other = of(content.id(), content("7.00"));
        assertThrows(KernelRefusal.Stale.class, () -> drafts.save(other, OFFICE));
        fixture.edit(first, other);
        assertEquals(2, drafts.save(content, OFFICE).version(), "a late first sending changes nothing");
        assertEquals(2, count("invoice-draft.save", first.id()), "one line for each change");
    }

    @Test
    void an_edit_raises_the_version_by_one_whatever_it_changes() {
        InvoiceDraft draft = fixture.draft(customer, content("6.50"));
        InvoiceDraft lines = fixture.edit(draft, content("7.00"));
        assertEquals(2, lines.version());
        InvoiceDraft noted = fixture.edit(lines, Records.with(lines.content(), "note", "Thank you again"));
        assertEquals(3, noted.version());
        assertEquals(noted, bench.get(ReadInvoices.class).draft(draft.id()));
    }

    @Test
    void two_at_once_on_a_new_id_make_one_draft() throws Exception {
        Draft content = content("6.50");
        Callable<InvoiceDraft> save = () -> bench.get(DraftInvoice.class).save(content, OFFICE);
        try (var both = Executors.newFixedThreadPool(2)) {
            for (Future<InvoiceDraft> one : both.invokeAll(List.of(save, save))) {
                assertEquals(1, one.get().version());
            }
        }
        assertEquals(1, count("invoice-draft.save", content.id()));
    }

    private static long count(String action, InvoiceId subject) {
        return ((Number) bench.value("select count(*) from audit_event where action = '" + action + "' and subject = '"
                        + subject + "'"))
                .longValue();
    }

    @Test
    void of_two_people_on_one_draft_the_loser_sees_both_versions() {
        InvoiceDraft draft = fixture.draft(customer, content("6.50"));
        Draft hers = InvoicingFixture.version(draft, content("7.00"));
        Draft his = InvoicingFixture.version(draft, content("8.00"));
        DraftInvoice drafts = bench.get(DraftInvoice.class);
        InvoiceDraft stored = drafts.save(hers, OFFICE);
        assertNotEquals(draft.version(), stored.version());
        KernelRefusal.Stale refused = assertThrows(KernelRefusal.Stale.class, () -> drafts.save(his, OFFICE));
        assertEquals(his, refused.yours());
        assertEquals(hers.withVersion(2), refused.theirs());
        assertEquals(List.of("lines"), refused.fields());
        assertEquals(409, refused.type().status());
        assertThrows(
                InvoiceRefusal.DraftChanged.class,
                () -> bench.get(IssueInvoice.class)
                        .issue(new IssueInvoice.Issue(
                                draft.id(), draft.version(), fixture.today(), CreditOnHand.KEEP, OFFICE)));
        assertEquals(stored, drafts.save(hers, OFFICE), "a retry of hers");
        assertEquals(stored, bench.get(ReadInvoices.class).draft(draft.id()));
    }

    @Test
    void discarding_takes_the_version_that_was_read_and_may_be_sent_again() {
        Draft content = content("6.50");
        InvoiceDraft draft = fixture.draft(customer, content);
        InvoiceDraft stored = fixture.edit(draft, content("7.00"));
        DraftInvoice drafts = bench.get(DraftInvoice.class);
        assertThrows(InvoiceRefusal.DraftChanged.class, () -> drafts.discard(draft.id(), draft.version(), OFFICE));
        drafts.discard(draft.id(), stored.version(), OFFICE);
        drafts.discard(draft.id(), stored.version(), OFFICE);
        assertEquals(1, count("invoice-draft.discard", draft.id()));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(ReadInvoices.class).draft(draft.id()));
        assertThrows(KernelRefusal.IdTaken.class, () -> drafts.save(content, OFFICE), "it does not come back");
        assertThrows(KernelRefusal.NotFound.class, () -> drafts.discard(InvoiceId.next(), 1, OFFICE));
    }

    @Test
    void drafts_are_listed_newest_first() {
        InvoiceDraft older = fixture.draft(customer, content("6.50"));
        InvoiceDraft newer = fixture.draft(customer, content("6.50"));
        var first = bench.get(ReadInvoices.class).drafts(null, 1);
        assertEquals(newer.id(), first.rows().getFirst().id());
        var second = bench.get(ReadInvoices.class).drafts(first.next(), 1);
        assertEquals(older.id(), second.rows().getFirst().id());
        assertEquals("Dormer Bakery", second.rows().getFirst().customerName());
        assertThrows(
                KernelRefusal.BadPageKey.class,
                () -> bench.get(ReadInvoices.class).drafts("x", 1));
    }

    /** Before there was a bound such a draft could be saved. */
    @Test
    void a_stored_draft_of_more_than_the_books_hold_is_read_and_mended() {
        Draft small = fixture.content(
                fixture.line(fixture.windows, "1", "5", EXEMPT), fixture.line(fixture.windows, "1", "6", EXEMPT));
        InvoiceDraft draft = fixture.draft(customer, small);
        bench.execute(
                "update invoice_draft_line set gross_price = 999999999999 where invoice_id = ?",
                draft.id().value());
        InvoiceDraft read = bench.get(ReadInvoices.class).draft(draft.id());
        assertEquals(fixture.money("1999999999998"), read.totals().gross());
        assertEquals(
                List.of("lines"),
                assertThrows(
                                KernelRefusal.TooLarge.class,
                                () -> fixture.edit(read, Records.with(read.content(), "note", "Changed")))
                        .fields());
        assertEquals(fixture.money("11"), fixture.edit(read, small).totals().gross());
    }

    @Test
    void what_is_wrong_is_named_and_leaves_nothing_behind() {
        Object before = bench.value("select count(*) from invoice_draft");
        DraftInvoice drafts = bench.get(DraftInvoice.class);
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> fixture.draft(
                        customer, fixture.content(fixture.line(fixture.windows, "1", "5", new TaxCode("NONE")))));
        assertThrows(KernelRefusal.NotFound.class, () -> fixture.draft(CustomerId.next(), content("6.50")));
        Draft nowhere = fixture.content(
                fixture.line(fixture.windows, "1", "5", EXEMPT), fixture.line(ServiceLineId.next(), "1", "5", EXEMPT));
        var refused = assertThrows(KernelRefusal.Unfit.class, () -> fixture.draft(customer, nowhere));
        assertEquals(List.of("lines[1].serviceLine"), refused.fields());
        var old = assertThrows(
                KernelRefusal.TooEarly.class,
                () -> fixture.draft(customer, Records.with(content("6.50"), "serviceDate", LocalDate.of(1950, 1, 1))));
        assertEquals(List.of("serviceDate"), old.fields());
        InvoiceDraft draft = fixture.draft(customer, content("6.50"));
        assertThrows(
                KernelRefusal.Unfit.class,
                () -> drafts.save(Records.with(draft.content(), "customer", fixture.customer("Another")), OFFICE));
        drafts.discard(draft.id(), draft.version(), OFFICE);
        DraftLine line = fixture.line(fixture.windows, "1", "5", EXEMPT);
        assertThrows(KernelRefusal.Twice.class, () -> fixture.content(line, line));
        assertThrows(KernelRefusal.NoRows.class, () -> fixture.content());
        assertEquals(before, bench.value("select count(*) from invoice_draft"));
    }
}
