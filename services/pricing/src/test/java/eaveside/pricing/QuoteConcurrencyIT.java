package eaveside.pricing;

import static eaveside.pricing.PricingFixture.OWNER;
import static eaveside.pricing.PricingFixture.TODAY;
import static eaveside.pricing.PricingFixture.VALID_UNTIL;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PriceBookId;
import eaveside.testing.Bench;
import java.sql.Connection;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.UUID;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Collectors;
import java.util.stream.LongStream;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Quotes made, revised and accepted at the same time, and what the database itself refuses. */
class QuoteConcurrencyIT {
    private static final int THREADS = 8;

    @RegisterExtension
    static final Bench bench = new Bench();

    private static PricingFixture company;

    @BeforeAll
    static void found() {
        company = new PricingFixture(bench);
        company.publish(company.list(TODAY, "12.00"));
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static <T> List<T> atOnce(List<Callable<T>> calls) throws Exception {
        try (ExecutorService pool = Executors.newFixedThreadPool(THREADS)) {
            List<T> results = new ArrayList<>();
            for (Future<T> result : pool.invokeAll(calls)) {
                results.add(result.get());
            }
            return results;
        }
    }

    @Test
    void numbers_stay_gapless_when_many_quote_at_once_and_some_fail() throws Exception {
        long before = (Long) bench.value("select last_number from pricing_series where type = 'QUOTE'");
        List<Callable<Long>> calls = new ArrayList<>();
        for (int i = 0; i < 40; i++) {
            boolean fails = i % 4 == 0;
            calls.add(() -> {
                try {
                    return bench.inTransaction(() -> {
                        Quote quote = company.quote(company.panels(10));
                        if (fails) {
                            throw new IllegalStateException("a fault after the number was drawn");
                        }
                        return quote.number();
                    });
                } catch (IllegalStateException fault) {
                    return -1L;
                }
            });
        }
        Set<Long> numbers = new TreeSet<>(atOnce(calls));
        numbers.remove(-1L);
        assertEquals(LongStream.rangeClosed(before + 1, before + 30).boxed().collect(Collectors.toSet()), numbers);
    }

    @Test
    void one_command_sent_many_times_at_once_makes_one_thing() throws Exception {
        NewQuote make = company.draftQuote(company.scope(VALID_UNTIL, company.panels(10)));
        List<Callable<Quote>> calls = new ArrayList<>();
        for (int i = 0; i < THREADS; i++) {
            calls.add(() -> bench.get(DraftQuote.class).draft(make));
        }
        assertEquals(1, Set.copyOf(atOnce(calls)).size());
        PriceBookDraft draft = new PriceBookDraft(PriceBookId.next(), company.list(TODAY, "11.00"), 0);
        List<Callable<PriceBookDraft>> drafts = new ArrayList<>();
        for (int i = 0; i < THREADS; i++) {
            drafts.add(() -> bench.get(SavePriceBook.class).save(draft, OWNER));
        }
        assertEquals(1, Set.copyOf(atOnce(drafts)).size());
    }

    @Test
    void of_many_revisions_at_once_one_wins() throws Exception {
        Quote quote = company.quote(company.panels(10));
        List<Callable<String>> calls = new ArrayList<>();
        for (int i = 0; i < THREADS; i++) {
            QuoteRevision revise = new QuoteRevision(
                    quote.id(), quote.version(), company.scope(VALID_UNTIL, company.panels(20 + i)), OWNER);
            calls.add(() -> {
                try {
                    bench.get(ReviseQuote.class).revise(revise);
                    return "won";
                } catch (KernelRefusal.Stale lost) {
                    return "lost";
                }
            });
        }
        List<String> results = atOnce(calls);
        assertEquals(1, results.stream().filter("won"::equals).count());
        assertEquals(THREADS - 1, results.stream().filter("lost"::equals).count());
    }

    @Test
    void two_books_published_at_once_have_two_numbers_in_a_row() throws Exception {
        List<Callable<Long>> calls = new ArrayList<>();
        for (int i = 1; i <= 4; i++) {
            PriceList list = company.list(TODAY.plusYears(i), "12.00");
            calls.add(() -> company.publish(list).number());
        }
        assertEquals(4, Set.copyOf(atOnce(calls)).size());
    }

    @Test
    void the_database_keeps_an_accepted_quote_and_its_lines() {
        Quote draft = company.quote(company.panels(48));
        Quote accepted =
                bench.get(AcceptQuote.class).accept(new QuoteAcceptance(draft.id(), draft.version(), "", OWNER));
        UUID id = accepted.id().value();
        for (String sql : List.of(
                "update quote set total = total + 1 where id = ?",
                "update quote set status = 'DRAFT', decided_at = null, decided_by = null where id = ?",
                "delete from quote_line where quote_id = ?",
                "delete from quote_line_reason where quote_line_id in (select id from quote_line where quote_id = ?)",
                "insert into quote_line select gen_random_uuid(), quote_id, 9, service_item_id, service_line_id,"
                        + " surface_id, quantity, unit, unit_price, base_quantity, base_unit, net_before, top_up, net,"
                        + " standard_minutes, expected_cost from quote_line where quote_id = ?")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql, id), sql);
            assertTrue(refused.getMessage().contains("kept as it is"), sql + ": " + refused.getMessage());
        }
        for (String sql : List.of("update quote_line set net = 1", "delete from quote", "truncate quote_line")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
    }

    @Test
    void the_database_refuses_a_total_that_its_lines_contradict_and_a_gap() throws SQLException {
        Quote quote = company.quote(company.panels(48));
        for (String sql : List.of(
                "update quote set total = total + 1 where id = '",
                "update quote set expected_minutes = expected_minutes + 1 where id = '",
                "update quote set expected_cost = null where id = '",
                "insert into quote_line select gen_random_uuid(), quote_id, 9, service_item_id, service_line_id,"
                        + " surface_id, quantity, unit, unit_price, base_quantity, base_unit, net_before, top_up, net,"
                        + " standard_minutes, expected_cost from quote_line where quote_id = '")) {
            try (Connection connection = bench.database().asApplication().getConnection();
                    Statement statement = connection.createStatement()) {
                connection.setAutoCommit(false);
                statement.execute(sql + quote.id() + "'");
                SQLException refused = assertThrows(SQLException.class, connection::commit);
                assertTrue(refused.getMessage().contains("its lines add up to"), refused.getMessage());
            }
        }
        String copy =
                "insert into quote select gen_random_uuid(), number + 7, customer_id, site_id, price_book_id, date,"
                        + " valid_until, status, came_from, note, driving_minutes, distance, distance_unit, total,"
                        + " expected_minutes, expected_cost, saved_by, saved_at, decided_by, decided_at, decision,"
                        + " draft_fingerprint, fingerprint, version from quote where id = ?";
        SQLException gap = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(copy, quote.id().value()));
        assertTrue(gap.getMessage().contains("gap"), gap.getMessage());
        SQLException moved = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication(
                        "update quote set number = number + 1 where id = ?",
                        quote.id().value()));
        assertTrue(moved.getMessage().contains("never change"), moved.getMessage());
    }
}
