package eaveside.invoicing;

import static eaveside.invoicing.InvoicingFixture.DAY;
import static eaveside.invoicing.InvoicingFixture.EXEMPT;
import static eaveside.invoicing.InvoicingFixture.OFFICE;
import static eaveside.invoicing.InvoicingFixture.rate;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.catalog.CatalogRefusal;
import eaveside.catalog.TaxCode;
import eaveside.customers.CustomersRefusal;
import eaveside.kernel.CustomerId;
import eaveside.kernel.InvoiceId;
import eaveside.testing.Bench;
import java.util.List;
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

    private static DraftContent content(String price) {
        return new DraftContent(
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
                List.of(new DraftContent.OnDocument(
                        Adjustment.allowance(fixture.money("10.00"), "Season"), rate("8.25"))),
                fixture.money("0"));
    }

    private static DraftInvoice.NewDraft newDraft(InvoiceId id, DraftContent content) {
        return new DraftInvoice.NewDraft(id, customer, content, OFFICE);
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
        InvoiceId id = InvoiceId.next();
        DraftContent content = content("6.50");
        DraftInvoice draft = bench.get(DraftInvoice.class);
        InvoiceDraft first = draft.draft(newDraft(id, content));
        assertEquals(first, draft.draft(newDraft(id, content)));
        assertThrows(InvoiceRefusal.IdTaken.class, () -> draft.draft(newDraft(id, content("7.00"))));
    }

    @Test
    void of_two_people_on_one_draft_the_loser_sees_both_versions() {
        InvoiceDraft draft = fixture.draft(customer, content("6.50"));
        EditDraft edit = bench.get(EditDraft.class);
        DraftContent hers = content("7.00");
        DraftContent his = content("8.00");
        InvoiceDraft stored = edit.edit(new EditDraft.Edit(draft.id(), draft.version(), hers));
        assertNotEquals(draft.version(), stored.version());
        InvoiceRefusal.DraftChanged refused = assertThrows(
                InvoiceRefusal.DraftChanged.class,
                () -> edit.edit(new EditDraft.Edit(draft.id(), draft.version(), his)));
        assertEquals(his, refused.yours());
        assertEquals(hers, refused.theirs().content());
        assertEquals(409, refused.type().status());
        assertThrows(
                InvoiceRefusal.DraftChanged.class,
                () -> bench.get(IssueInvoice.class)
                        .issue(new IssueInvoice.Issue(
                                draft.id(), draft.version(), fixture.today(), CreditOnHand.KEEP, OFFICE)));
        assertEquals(stored, edit.edit(new EditDraft.Edit(draft.id(), draft.version(), hers)), "a retry of hers");
        assertEquals(stored, bench.get(ReadInvoices.class).draft(draft.id()));
    }

    @Test
    void discarding_takes_the_version_that_was_read() {
        InvoiceDraft draft = fixture.draft(customer, content("6.50"));
        EditDraft edit = bench.get(EditDraft.class);
        InvoiceDraft stored = edit.edit(new EditDraft.Edit(draft.id(), draft.version(), content("7.00")));
        assertThrows(InvoiceRefusal.DraftChanged.class, () -> edit.discard(draft.id(), draft.version()));
        edit.discard(draft.id(), stored.version());
        assertThrows(
                InvoiceRefusal.NoSuchDraft.class,
                () -> bench.get(ReadInvoices.class).draft(draft.id()));
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
                InvoiceRefusal.BadPageKey.class,
                () -> bench.get(ReadInvoices.class).drafts("x", 1));
    }

    @Test
    void what_is_wrong_is_named_and_leaves_nothing_behind() {
        Object before = bench.value("select count(*) from invoice_draft");
        InvoiceId id = InvoiceId.next();
        DraftInvoice draft = bench.get(DraftInvoice.class);
        assertThrows(
                CatalogRefusal.NoSuchTaxCode.class,
                () -> draft.draft(
                        newDraft(id, fixture.content(fixture.line(fixture.windows, "1", "5", new TaxCode("NONE"))))));
        assertThrows(
                CustomersRefusal.NoSuchCustomer.class,
                () -> draft.draft(new DraftInvoice.NewDraft(id, CustomerId.next(), content("6.50"), OFFICE)));
        DraftLine line = fixture.line(fixture.windows, "1", "5", EXEMPT);
        assertThrows(InvoiceRefusal.LineTwice.class, () -> fixture.content(line, line));
        assertThrows(InvoiceRefusal.NoLines.class, () -> fixture.content());
        assertEquals(before, bench.value("select count(*) from invoice_draft"));
    }
}
