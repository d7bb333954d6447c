package eaveside.pricing;

import static eaveside.pricing.PricingFixture.OWNER;
import static eaveside.pricing.PricingFixture.TODAY;
import static eaveside.pricing.PricingFixture.VALID_UNTIL;
import static eaveside.pricing.TestLists.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.catalog.Catalog;
import eaveside.catalog.CatalogRefusal;
import eaveside.catalog.SaveServiceItem;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.customers.SaveSite;
import eaveside.inventory.SaveStockItem;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SiteId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class QuotesIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static PricingFixture company;
    private static PriceBook spring;

    @BeforeAll
    static void found() {
        company = new PricingFixture(bench);
        spring = company.publish(company.list(TODAY, "12.00"));
    }

    @AfterEach
    void books_are_true() {
        bench.clock().to(TODAY);
        bench.verifyBooks();
    }

    private static QuoteRevision revise(Quote quote, QuoteScope.Line... lines) {
        return new QuoteRevision(quote.id(), quote.version(), company.scope(VALID_UNTIL, lines), OWNER);
    }

    private static QuoteAcceptance agree(Quote quote) {
        return new QuoteAcceptance(quote.id(), quote.version(), "Ms. Quill, by phone", OWNER);
    }

    /**
     * By hand. Panels from 40: 7.50 + 20 % 1.50 = 9.00, less 5 % 0.45 = 8.55; × 48 = 410.40. Skylights 11.40 × 6 = 68.40.
     * Minutes 48 × 2 + 6 × 6 = 132. Labor 132 min at 30.00 = 66.00; travel 30 min 15.00 + 12 mi × 0.70 8.40 = 23.40;
     * overhead 162 min at 12.00 = 32.40; shared 96 : 36: panels 48.00 + 17.02 + 23.56 = 88.58, skylights 18.00 + 6.38 +
     * 8.84 = 33.22. Soap 48 × 0.5 oz × 0.20 = 4.80. Cost 126.60, so the margin is 352.20 ÷ 478.80 = 73.56 %.
     */
    @Test
    void a_quote_keeps_price_reasons_minutes_and_cost() {
        Quote made = company.quote(company.panels(48), company.skylights(6));
        Quote read = bench.get(ReadQuotes.class).quote(made.id());
        assertEquals(made, read);
        assertEquals(spring.id(), read.book());
        assertEquals(QuoteStatus.DRAFT, read.status());
        assertEquals(usd("478.80"), read.total());
        Quote.Line panels = read.lines().getFirst();
        assertEquals(usd("410.40"), panels.net());
        assertEquals(
                "48 at $7.50 each (the price from 40), plus 20% ($1.50) for story 2, less 5% ($0.45) because 2"
                        + " services share the visit, so $8.55 each, makes $410.40.",
                ExplanationText.of(panels.explanation(), Locale.US));
        assertEquals(StandardMinutes.of(96), panels.standardMinutes());
        assertEquals(usd("93.38"), panels.expectedCost());
        assertEquals(usd("33.22"), read.lines().getLast().expectedCost());
        assertEquals(StandardMinutes.of(132), read.expectedMinutes());
        assertEquals(usd("126.60"), read.expectedCost());
        assertEquals(Percent.of("73.56"), read.earnings().orElseThrow().margin().orElseThrow());
    }

    /** By hand: 2 skylights 24.00; 36.00 to the line's minimum of 60.00; 90.00 to the visit's of 150.00. */
    @Test
    void top_ups_are_stored_with_their_reasons() {
        Quote quote = bench.get(ReadQuotes.class)
                .quote(company.quote(company.skylights(2)).id());
        Quote.Line line = quote.lines().getFirst();
        assertEquals(usd("24.00"), line.netBeforeTopUp());
        assertEquals(usd("126.00"), line.topUp());
        assertEquals(usd("150.00"), quote.total());
        assertEquals(
                List.of(
                        new PriceReason.ToLineMinimum(usd("60.00"), usd("36.00")),
                        new PriceReason.ToVisitMinimum(usd("150.00"), usd("90.00"))),
                line.explanation().reasons().subList(1, 3));
    }

    @Test
    void making_again_is_a_retry_and_other_content_a_clash() {
        DraftQuote making = bench.get(DraftQuote.class);
        NewQuote make = company.draftQuote(company.scope(VALID_UNTIL, company.panels(10)));
        Quote first = making.draft(make);
        assertEquals(first, making.draft(make));
        Quote offered = bench.get(SendQuote.class).send(new QuoteSending(first.id(), first.version(), OWNER));
        assertEquals(offered, making.draft(make), "a late retry answers the quote as it is");
        NewQuote other =
                new NewQuote(make.id(), make.customer(), make.site(), FindingId.next(), make.scope(), make.by());
        KernelRefusal.IdTaken clash = assertThrows(KernelRefusal.IdTaken.class, () -> making.draft(other));
        assertEquals(Refusal.Type.CONFLICT, clash.type());
        NewQuote stolenLine = company.draftQuote(make.scope());
        assertThrows(KernelRefusal.IdTaken.class, () -> making.draft(stolenLine));
    }

    @Test
    void of_two_revisions_the_second_loses_and_sees_both() {
        ReviseQuote revising = bench.get(ReviseQuote.class);
        Quote quote = company.quote(company.panels(48));
        QuoteRevision first = revise(quote, company.panels(46), company.skylights(10));
        Quote revised = revising.revise(first);
        assertEquals(revised, revising.revise(first), "the same again is a retry");
        assertEquals(quote.number(), revised.number());
        assertEquals(2, revised.lines().size());
        assertEquals(revised, bench.get(ReadQuotes.class).quote(quote.id()));
        QuoteRevision second = revise(quote, company.panels(47));
        KernelRefusal.Stale lost = assertThrows(KernelRefusal.Stale.class, () -> revising.revise(second));
        assertSame(second, lost.yours());
        assertEquals(new QuoteRevision(revised.id(), revised.version(), revised.scope(), OWNER), lost.theirs());
        assertEquals(List.of("scope.lines"), lost.fields());
        assertEquals(Refusal.Type.CONFLICT, lost.type());
    }

    @Test
    void a_revision_can_keep_its_lines_ids() {
        QuoteScope.Line line = company.panels(48);
        Quote quote = company.quote(line);
        QuoteScope.Line fewer =
                new QuoteScope.Line(line.id(), line.serviceItem(), line.surface(), Quantity.of(20, Unit.PIECE));
        Quote revised = bench.get(ReviseQuote.class).revise(revise(quote, company.skylights(6), fewer));
        assertEquals(line.id(), revised.lines().getLast().id());
        assertEquals(Quantity.of(20, Unit.PIECE), revised.lines().getLast().quantity());
    }

    @Test
    void a_quote_keeps_its_book_until_it_expires() {
        Quote quote = company.quote(company.skylights(20));
        PriceBook later = company.publish(company.list(TODAY.plusDays(3), "15.00"));
        bench.clock().to(TODAY.plusDays(4));
        Quote kept = bench.get(ReviseQuote.class).revise(revise(quote, company.skylights(30)));
        assertEquals(spring.id(), kept.book());
        assertEquals(usd("360.00"), kept.total());
        assertEquals(later.id(), company.quote(company.skylights(20)).book());

        bench.clock().to(VALID_UNTIL.plusDays(1));
        assertTrue(kept.isExpiredOn(VALID_UNTIL.plusDays(1)));
        assertThrows(
                PricingRefusal.QuoteExpired.class,
                () -> bench.get(AcceptQuote.class).accept(agree(kept)));
        Quote renewed = bench.get(ReviseQuote.class)
                .revise(new QuoteRevision(
                        kept.id(),
                        kept.version(),
                        company.scope(VALID_UNTIL.plusDays(30), company.skylights(30)),
                        OWNER));
        assertEquals(later.id(), renewed.book());
        assertEquals(usd("450.00"), renewed.total());
    }

    @Test
    void a_sent_quote_is_a_draft_again_when_revised_and_an_accepted_one_never_changes() {
        Quote draft = company.quote(company.panels(48));
        Quote offered = bench.get(SendQuote.class).send(new QuoteSending(draft.id(), draft.version(), OWNER));
        assertEquals(QuoteStatus.SENT, offered.status());
        Quote revised = bench.get(ReviseQuote.class).revise(revise(offered, company.panels(40)));
        assertEquals(QuoteStatus.DRAFT, revised.status());
        assertThrows(
                KernelRefusal.Stale.class,
                () -> bench.get(AcceptQuote.class).accept(agree(offered)),
                "nobody agrees to prices other than those shown");
        Quote accepted = bench.get(AcceptQuote.class).accept(agree(revised));
        assertEquals(accepted, bench.get(AcceptQuote.class).accept(agree(revised)));
        assertEquals(
                "Ms. Quill, by phone",
                Objects.requireNonNull(accepted.decision()).words());
        assertThrows(
                PricingRefusal.QuoteClosed.class,
                () -> bench.get(ReviseQuote.class).revise(revise(accepted, company.panels(4))));
        assertThrows(
                PricingRefusal.QuoteClosed.class,
                () -> bench.get(DeclineQuote.class)
                        .decline(new QuoteDecline(accepted.id(), accepted.version(), "Too dear", OWNER)));
        Quote other = company.quote(company.panels(5));
        QuoteDecline decline = new QuoteDecline(other.id(), other.version(), "Too dear", OWNER);
        Quote declined = bench.get(DeclineQuote.class).decline(decline);
        assertEquals(declined, bench.get(DeclineQuote.class).decline(decline));
        assertEquals(QuoteStatus.DECLINED, declined.status());
    }

    @Test
    void an_expectation_that_is_not_known_stays_empty() {
        bench.clock().to(LocalDate.of(2026, 3, 5));
        ServiceItemId waxing = ServiceItemId.next();
        company.sell(waxing, company.arrayLine, "WAX", "Panel, waxed", null, "3", Unit.PIECE, true);
        StockItemId wax = StockItemId.next();
        bench.get(SaveStockItem.class)
                .save(StockItem.of(wax, "WAX", "Wax", StockType.CONCENTRATE, Unit.MILLILITER), OWNER);
        uses(waxing, wax, Quantity.of(1, Unit.MILLILITER));
        sellOnly(LocalDate.of(2026, 3, 5), waxing, "5.00");
        Quote quote = company.quote(new QuoteScope.Line(QuoteLineId.next(), waxing, null, Quantity.of(40, Unit.PIECE)));
        assertNull(quote.expectedCost());
        assertTrue(quote.earnings().isEmpty());
        assertEquals(StandardMinutes.of(120), quote.expectedMinutes());
    }

    private static StockItemId soap() {
        return bench.get(Catalog.class)
                .serviceItem(company.panelClean)
                .consumables()
                .getFirst()
                .item();
    }

    private static void uses(ServiceItemId serviceItem, StockItemId item, Quantity perUnit) {
        ServiceItem sold = bench.get(Catalog.class).serviceItem(serviceItem);
        List<StandardConsumable> used = List.of(new StandardConsumable(item, perUnit));
        bench.get(SaveServiceItem.class).save(Records.with(sold, "consumables", used), OWNER);
    }

    /** A book with one price, from that day on. */
    private static void sellOnly(LocalDate from, ServiceItemId serviceItem, String each) {
        ServiceItemPrice price = new ServiceItemPrice(serviceItem, List.of(TestLists.each("0", each)), List.of());
        PriceList prices = Records.with(company.list(from, "12.00"), "prices", List.of(price));
        company.publish(Records.with(prices, "lineMinimums", List.of()));
    }

    /** 100,000 fluid ounces of soap at 0.20 for each of 90 million pieces: 1.8 trillion, in no time at all. */
    @Test
    void consumables_worth_more_than_the_books_hold_are_refused_by_the_quantity() {
        bench.clock().to(LocalDate.of(2026, 3, 4));
        ServiceItemId rinse = ServiceItemId.next();
        company.sell(rinse, company.arrayLine, "RINSE", "Rinse", null, "0", Unit.PIECE, true);
        uses(rinse, soap(), Quantity.of(100_000, Unit.US_FLUID_OUNCE));
        sellOnly(LocalDate.of(2026, 3, 4), rinse, "1.00");
        Refusal refused = assertThrows(
                KernelRefusal.Unfit.class,
                () -> company.quote(
                        new QuoteScope.Line(QuoteLineId.next(), rinse, null, Quantity.of(90_000_000, Unit.PIECE))));
        assertEquals(List.of("scope.lines[0].quantity"), refused.fields());
    }

    /** 99,999 for each of 90 million pieces: 9 trillion, which could be accepted and never be billed. */
    @Test
    void prices_of_more_than_the_books_hold_are_refused_where_they_are_saved_and_where_they_are_asked() {
        bench.clock().to(LocalDate.of(2026, 3, 4));
        ServiceItemId polish = ServiceItemId.next();
        company.sell(polish, company.arrayLine, "POLISH", "Polish", null, "0", Unit.PIECE, true);
        sellOnly(LocalDate.of(2026, 3, 4), polish, "99999.00");
        var line = new QuoteScope.Line(QuoteLineId.next(), polish, null, Quantity.of(90_000_000, Unit.PIECE));
        Refusal saved = assertThrows(KernelRefusal.TooLarge.class, () -> company.quote(line));
        assertEquals(List.of("scope.lines[0].quantity"), saved.fields());
        PriceBookId book = bench.get(ReadPriceBooks.class)
                .inForce(LocalDate.of(2026, 3, 4))
                .id();
        PriceWork prices = bench.get(PriceWork.class);
        Refusal shown = assertThrows(KernelRefusal.TooLarge.class, () -> prices.preview(book, List.of(line)));
        assertEquals(List.of("lines[0].quantity"), shown.fields());
        var asked = new PriceWork.Request.Line(polish, line.quantity(), null, Map.of());
        Refusal answered = assertThrows(
                KernelRefusal.TooLarge.class, () -> prices.answer(new PriceWork.Request(book, null, List.of(asked))));
        assertEquals(List.of("lines[0].quantity"), answered.fields());
    }

    @Test
    void a_preview_says_what_saving_would_refuse() {
        QuoteScope.Line line = company.panels(60_000);
        PriceWork prices = bench.get(PriceWork.class);
        PriceBookId book = bench.get(ReadPriceBooks.class).inForce(TODAY).id();
        Refusal refused = assertThrows(CatalogRefusal.TooMuchWork.class, () -> prices.preview(book, List.of(line)));
        assertEquals(List.of("lines[0].quantity"), refused.fields());
    }

    @Test
    void what_does_not_belong_together_is_refused_and_takes_no_number() {
        DraftQuote making = bench.get(DraftQuote.class);
        Object before = bench.value("select last_number from pricing_series where type = 'QUOTE'");
        SiteId elsewhere = SiteId.next();
        bench.get(SaveSite.class).save(company.site(elsewhere), OWNER);
        NewQuote fine = company.draftQuote(company.scope(VALID_UNTIL, company.panels(10)));
        assertThrows(
                PricingRefusal.Elsewhere.class,
                () -> making.draft(
                        new NewQuote(QuoteId.next(), company.customer, elsewhere, null, fine.scope(), OWNER)));
        assertThrows(
                Refusal.class,
                () -> making.draft(
                        new NewQuote(QuoteId.next(), CustomerId.next(), company.site, null, fine.scope(), OWNER)));
        refused(CatalogRefusal.ServiceItemDoesNotFit.class, company.skylightClean, Unit.PIECE);
        refused(CatalogRefusal.ServiceItemDoesNotFit.class, company.panelClean, Unit.SQUARE_FOOT);
        assertThrows(
                KernelRefusal.TooEarly.class,
                () -> making.draft(company.draftQuote(company.scope(TODAY.minusDays(1), company.panels(1)))));
        var never = assertThrows(
                KernelRefusal.TooLate.class,
                () -> making.draft(
                        company.draftQuote(company.scope(TODAY.plusYears(10).plusDays(1), company.panels(1)))));
        assertEquals(List.of("scope.validUntil"), never.fields());
        assertThrows(KernelRefusal.NoRows.class, () -> company.scope(VALID_UNTIL));
        QuoteScope.Line line = company.panels(1);
        assertThrows(KernelRefusal.Twice.class, () -> company.scope(VALID_UNTIL, line, line));
        assertThrows(
                KernelRefusal.NotFound.class, () -> bench.get(ReadQuotes.class).quote(QuoteId.next()));
        assertEquals(before, bench.value("select last_number from pricing_series where type = 'QUOTE'"));
    }

    private static void refused(Class<? extends Refusal> type, ServiceItemId serviceItem, Unit unit) {
        QuoteScope.Line line =
                new QuoteScope.Line(QuoteLineId.next(), serviceItem, company.array, Quantity.of(1, unit));
        assertThrows(type, () -> company.quote(line));
    }

    @Test
    void lists_page_by_number_and_open_quotes_wait_longest_first() {
        FindingId finding = company.finding();
        NewQuote upsell = new NewQuote(
                QuoteId.next(),
                company.customer,
                company.site,
                finding,
                company.scope(VALID_UNTIL, company.panels(9)),
                OWNER);
        Quote from = bench.get(DraftQuote.class).draft(upsell);
        Quote newest = company.quote(company.panels(9));
        ReadQuotes read = bench.get(ReadQuotes.class);
        assertEquals(
                List.of(from.id()),
                read.from(finding).stream().map(QuoteSummary::id).toList());
        var first = read.list(ReadQuotes.Query.EVERY, null, 1);
        assertEquals(newest.id(), first.rows().getFirst().id());
        assertEquals(
                from.id(),
                read.list(ReadQuotes.Query.EVERY, first.next(), 1)
                        .rows()
                        .getFirst()
                        .id());
        assertEquals(
                newest.id(),
                read.list(new ReadQuotes.Query(null, company.customer, ""), null, 5)
                        .rows()
                        .getFirst()
                        .id());
        var due = bench.rows("select id, detail from due_items(?) where type = 'QUOTE' order by number", newest.date());
        assertTrue(due.stream()
                .allMatch(quote ->
                        QuoteStatus.valueOf((String) quote.get("detail")).isOpen()));
        assertEquals(newest.id().value(), due.getLast().get("id"));
        assertTrue(read.list(new ReadQuotes.Query(QuoteStatus.DRAFT, null, ""), null, 1000).rows().stream()
                .allMatch(s -> s.status() == QuoteStatus.DRAFT));
        assertThrows(KernelRefusal.BadPageKey.class, () -> read.list(ReadQuotes.Query.EVERY, "last", 5));
    }

    @Test
    void a_finding_that_does_not_exist_is_refused_by_its_field_and_takes_no_number() throws SQLException {
        Object before = bench.value("select last_number from pricing_series where type = 'QUOTE'");
        NewQuote fine = company.draftQuote(company.scope(VALID_UNTIL, company.panels(10)));
        Refusal refused = assertThrows(
                Refusal.class,
                () -> bench.get(DraftQuote.class)
                        .draft(new NewQuote(
                                fine.id(), fine.customer(), fine.site(), FindingId.next(), fine.scope(), OWNER)));
        assertEquals(List.of("cameFrom"), refused.fields());
        assertEquals(Refusal.Type.RULE, refused.type());
        assertEquals(before, bench.value("select last_number from pricing_series where type = 'QUOTE'"));
        UUID quote = company.quote(company.panels(10)).id().value();
        SQLException kept = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication("update quote set came_from = gen_random_uuid() where id = ?", quote));
        assertTrue(kept.getMessage().contains("quote_came_from_finding"), kept.getMessage());
    }

    @Test
    void a_list_is_narrowed_by_status_customer_number_and_words() {
        Quote one = company.quote(company.panels(9));
        Quote other = company.quote(company.panels(9));
        bench.get(DeclineQuote.class).decline(new QuoteDecline(other.id(), other.version(), "Too dear", OWNER));
        assertTrue(listed(QuoteStatus.DRAFT, null, "quill").contains(one.id()));
        assertFalse(listed(QuoteStatus.DRAFT, null, "quill").contains(other.id()));
        assertEquals(List.of(other.id()), listed(null, company.customer, String.valueOf(other.number())));
        assertEquals(List.of(), listed(QuoteStatus.SENT, null, String.valueOf(other.number())));
        assertEquals(List.of(), listed(null, null, "nobody of that name"));
        assertEquals(List.of(), listed(null, CustomerId.next(), ""));
    }

    private static List<QuoteId> listed(@Nullable QuoteStatus status, @Nullable CustomerId customer, String search) {
        return bench
                .get(ReadQuotes.class)
                .list(new ReadQuotes.Query(status, customer, search), null, 1000)
                .rows()
                .stream()
                .map(QuoteSummary::id)
                .toList();
    }

    @Test
    void every_deed_is_on_the_audit_log_once() {
        NewQuote make = company.draftQuote(company.scope(VALID_UNTIL, company.panels(10)));
        Quote draft = bench.get(DraftQuote.class).draft(make);
        bench.get(DraftQuote.class).draft(make);
        QuoteSending send = new QuoteSending(draft.id(), draft.version(), OWNER);
        Quote sent = bench.get(SendQuote.class).send(send);
        bench.get(SendQuote.class).send(send);
        bench.get(AcceptQuote.class).accept(agree(sent));
        assertEquals(
                "quote.draft, quote.send, quote.accept",
                bench.value("select string_agg(action, ', ' order by at) from audit_event where subject = '"
                        + draft.id() + "'"));
    }
}
