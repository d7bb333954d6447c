package eaveside.pricing;

import static eaveside.pricing.PricingFixture.OWNER;
import static eaveside.pricing.PricingFixture.TODAY;
import static eaveside.pricing.TestLists.each;
import static eaveside.pricing.TestLists.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.catalog.CatalogRefusal;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Percent;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Unit;
import eaveside.pricing.PriceWork.DoneLine;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class PriceBooksIT {
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

    private static PriceBookDraft draft(PriceBookId id, int version, PriceList list) {
        return new PriceBookDraft(id, list, version);
    }

    @Test
    void a_book_reads_back_as_it_was_published() {
        PriceBook read = bench.get(ReadPriceBooks.class).book(spring.id());
        assertEquals(spring, read);
        assertEquals(company.list(TODAY, "12.00"), read.list());
    }

    @Test
    void a_draft_sent_again_is_a_retry_and_a_stale_one_loses() {
        SavePriceBook saving = bench.get(SavePriceBook.class);
        PriceBookId id = PriceBookId.next();
        PriceList first = company.list(TODAY, "13.00");
        PriceList second = company.list(TODAY, "14.00");
        PriceBookDraft draft = saving.save(draft(id, 0, first), OWNER);
        assertEquals(draft, saving.save(draft(id, 0, first), OWNER));
        assertThrows(KernelRefusal.Stale.class, () -> saving.save(draft(id, 0, second), OWNER));
        PriceBookDraft changed = saving.save(draft(id, draft.version(), second), OWNER);
        assertTrue(changed.version() > draft.version());
        assertEquals(second, bench.get(ReadPriceBooks.class).draft(id).list());
        PriceBookDraft stale = draft(id, draft.version(), company.list(TODAY, "15.00"));
        KernelRefusal.Stale lost = assertThrows(KernelRefusal.Stale.class, () -> saving.save(stale, OWNER));
        assertSame(stale, lost.yours());
        assertEquals(changed, lost.theirs());
        assertThrows(
                KernelRefusal.Stale.class,
                () -> bench.get(PublishPriceBook.class)
                        .publish(new PublishPriceBook.Publish(id, draft.version(), OWNER)));
        assertThrows(
                PricingRefusal.NotPublished.class,
                () -> bench.get(ReadPriceBooks.class).book(id));
    }

    @Test
    void publishing_again_is_a_retry_and_numbers_once() {
        PriceBookDraft draft = bench.get(SavePriceBook.class)
                .save(draft(PriceBookId.next(), 0, company.list(LocalDate.of(2026, 9, 1), "20.00")), OWNER);
        PublishPriceBook.Publish command = new PublishPriceBook.Publish(draft.id(), draft.version(), OWNER);
        PriceBook published = bench.get(PublishPriceBook.class).publish(command);
        assertEquals(published, bench.get(PublishPriceBook.class).publish(command));
        assertEquals(
                published.number(), bench.value("select last_number from pricing_series where type = 'PRICE_BOOK'"));
        assertThrows(
                PricingRefusal.AlreadyPublished.class,
                () -> bench.get(SavePriceBook.class)
                        .save(draft(draft.id(), draft.version() + 1, company.list(TODAY, "1.00")), OWNER));
        assertEquals(
                published.id(),
                bench.get(ReadPriceBooks.class).list(null, 1).rows().stream()
                        .filter(book -> book.number() != null)
                        .findFirst()
                        .orElseThrow()
                        .id());
    }

    @Test
    void the_book_of_the_day_is_the_latest_that_has_begun() {
        PriceBook summer = company.publish(company.list(LocalDate.of(2026, 6, 1), "13.00"));
        ReadPriceBooks read = bench.get(ReadPriceBooks.class);
        assertEquals(spring.id(), read.inForce(LocalDate.of(2026, 5, 31)).id());
        assertEquals(summer.id(), read.inForce(LocalDate.of(2026, 6, 1)).id());
        PriceBook corrected = company.publish(company.list(LocalDate.of(2026, 6, 1), "13.50"));
        assertEquals(corrected.id(), read.inForce(LocalDate.of(2026, 6, 1)).id());
        assertThrows(PricingRefusal.NoBookInForce.class, () -> read.inForce(LocalDate.of(2026, 1, 15)));
    }

    @Test
    void prices_that_were_in_force_stay_what_they_were() {
        bench.clock().to(LocalDate.of(2026, 3, 20));
        PriceBookDraft late = bench.get(SavePriceBook.class)
                .save(draft(PriceBookId.next(), 0, company.list(LocalDate.of(2026, 3, 10), "9.00")), OWNER);
        assertThrows(
                KernelRefusal.TooEarly.class,
                () -> bench.get(PublishPriceBook.class)
                        .publish(new PublishPriceBook.Publish(late.id(), late.version(), OWNER)));
        PriceBook earlier = company.publish(company.list(LocalDate.of(2026, 2, 1), "9.00"));
        ReadPriceBooks read = bench.get(ReadPriceBooks.class);
        assertEquals(earlier.id(), read.inForce(LocalDate.of(2026, 2, 28)).id());
        assertEquals(spring.id(), read.inForce(TODAY).id());
    }

    @Test
    void what_the_catalog_or_the_books_contradict_is_refused() {
        SavePriceBook saving = bench.get(SavePriceBook.class);
        var old = assertThrows(
                KernelRefusal.TooEarly.class,
                () -> saving.save(draft(PriceBookId.next(), 0, company.list(LocalDate.of(1950, 1, 1), "9.00")), OWNER));
        assertEquals(List.of("list.from"), old.fields());
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> saving.save(draft(PriceBookId.next(), 0, one(ServiceItemId.next(), each("0", "1.00"))), OWNER));
        assertThrows(
                CatalogRefusal.ServiceItemDoesNotFit.class,
                () -> saving.save(
                        draft(
                                PriceBookId.next(),
                                0,
                                one(company.panelClean, TestLists.step("0", "1.00", Unit.SQUARE_FOOT))),
                        OWNER));
        assertThrows(
                CatalogRefusal.ServiceItemDoesNotFit.class,
                () -> saving.save(
                        draft(
                                PriceBookId.next(),
                                0,
                                one(
                                        company.skylightClean,
                                        each("0", "1.00"),
                                        TestLists.percent(SurfaceAttribute.GROWTH_GRADE, 1, "5"))),
                        OWNER));
        PriceBookDraft empty = saving.save(
                draft(
                        PriceBookId.next(),
                        0,
                        new PriceList("Empty", TODAY, usd("0"), Percent.of("0"), List.of(), List.of())),
                OWNER);
        assertThrows(
                PricingRefusal.NothingPriced.class,
                () -> bench.get(PublishPriceBook.class)
                        .publish(new PublishPriceBook.Publish(empty.id(), empty.version(), OWNER)));
        assertThrows(
                KernelRefusal.NotFound.class, () -> saving.save(draft(PriceBookId.next(), 3, empty.list()), OWNER));
    }

    private static PriceList one(ServiceItemId serviceItem, QuantityStep step, Surcharge... surcharges) {
        return new PriceList(
                "One",
                TODAY,
                usd("0"),
                Percent.of("0"),
                List.of(),
                List.of(new ServiceItemPrice(serviceItem, List.of(step), List.of(surcharges))));
    }

    @Test
    void the_database_keeps_a_published_book() {
        UUID book = spring.id().value();
        for (String sql : List.of(
                "update price_book set visit_minimum = 1 where id = ?",
                "update price_book set number = null, published_at = null, published_by = null where id = ?",
                "delete from quantity_step where price_book_id = ?",
                "delete from surcharge where price_book_id = ?",
                "delete from service_item_price where price_book_id = ?",
                "delete from price_book_line_minimum where price_book_id = ?",
                "insert into surcharge (price_book_id, service_item_id, attribute, at_least, percent) select"
                        + " price_book_id, service_item_id, 'STORY', 5, 10 from service_item_price where price_book_id"
                        + " = ?")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql, book), sql);
            assertTrue(refused.getMessage().contains("is published"), sql + ": " + refused.getMessage());
        }
        for (String sql : List.of(
                "update quantity_step set price = 1",
                "update surcharge set percent = 1",
                "update price_book_line_minimum set amount = 1",
                "delete from price_book",
                "truncate quantity_step",
                "delete from pricing_series")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
        AssertionError owner = assertThrows(
                AssertionError.class,
                () -> bench.execute("update quantity_step set price = 1 where price_book_id = ?", book));
        assertTrue(String.valueOf(owner.getCause()).contains("is published"));
    }

    @Test
    void the_database_refuses_a_book_that_is_not_whole() {
        PriceBookDraft draft =
                bench.get(SavePriceBook.class).save(draft(PriceBookId.next(), 0, company.list(TODAY, "12.00")), OWNER);
        UUID id = draft.id().value();
        bench.execute("update quantity_step set price = 99 where price_book_id = ? and from_quantity = 40", id);
        refusedToPublish(id, "rises");
        bench.execute("delete from quantity_step where price_book_id = ? and from_quantity = 0", id);
        refusedToPublish(id, "from zero on");
    }

    private static void refusedToPublish(UUID id, String why) {
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "update price_book set published_at = now(), published_by = saved_by,"
                                + " number = (select max(number) + 1 from price_book) where id = ?",
                        id));
        assertTrue(refused.getMessage().contains(why), refused.getMessage());
    }

    /** By hand: 46 × the quoted 8.55 = 393.30; 4 extra skylights at 12.00 less 5 % = 45.60, topped up to the line's 60.00. */
    @Test
    void done_work_keeps_quoted_prices_and_prices_extras_from_the_pinned_book() {
        Quote quote = company.quote(company.panels(48), company.skylights(6));
        company.publish(company.list(TODAY.plusDays(1), "99.00"));
        QuoteLineId panels = quote.lines().getFirst().id();
        PricedWork priced = bench.get(PriceWork.class)
                .priceDone(
                        quote.book(),
                        List.of(
                                new DoneLine(panels, company.panelClean, pieces(46), company.array, panels, false),
                                new DoneLine(
                                        QuoteLineId.next(),
                                        company.skylightClean,
                                        pieces(4),
                                        company.skylights,
                                        null,
                                        false)));
        assertEquals(usd("393.30"), priced.lines().getFirst().net());
        assertEquals(usd("45.60"), priced.lines().getLast().netBeforeTopUp());
        assertEquals(usd("14.40"), priced.lines().getLast().topUp());
        assertEquals(usd("453.30"), priced.total());
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(PriceWork.class)
                        .priceDone(
                                quote.book(),
                                List.of(new DoneLine(
                                        panels, company.panelClean, pieces(1), null, QuoteLineId.next(), false))));
        assertThrows(
                CatalogRefusal.ServiceItemDoesNotFit.class,
                () -> bench.get(PriceWork.class)
                        .priceDone(
                                quote.book(),
                                List.of(new DoneLine(panels, company.skylightClean, pieces(1), null, panels, false))));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> bench.get(PriceWork.class)
                        .price(
                                PriceBookId.next(),
                                List.of(new WorkLine(panels, company.panelClean, pieces(1), Map.of(), null))));
    }

    private static Quantity pieces(int count) {
        return Quantity.of(count, Unit.PIECE);
    }
}
