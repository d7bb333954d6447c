package eaveside.pricing;

import static eaveside.pricing.PricingFixture.TODAY;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.testing.Bench;
import java.util.UUID;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** Damage done behind the constraints' back is found by the proofs, and named. */
class PricingProofsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static Quote quote;

    @BeforeAll
    static void found() {
        PricingFixture company = new PricingFixture(bench);
        company.publish(company.list(TODAY, "12.00"));
        quote = company.quote(company.panels(48), company.skylights(2));
    }

    @AfterEach
    void books_are_true_again() {
        bench.verifyBooks();
    }

    private static void foundOut(String says, String damage, String repair, UUID id) {
        behindTheBack(damage, id);
        try {
            AssertionError error = assertThrows(AssertionError.class, bench::verifyBooks, damage);
            assertTrue(error.getMessage().contains(says), error.getMessage());
        } finally {
            behindTheBack(repair, id);
        }
    }

    private static void behindTheBack(String sql, UUID id) {
        for (String table : new String[] {"quote", "quote_line", "quote_line_reason"}) {
            bench.execute("alter table " + table + " disable trigger user");
        }
        bench.execute(sql, id);
        for (String table : new String[] {"quote", "quote_line", "quote_line_reason"}) {
            bench.execute("alter table " + table + " enable trigger user");
        }
    }

    @Test
    void a_changed_total() {
        foundOut(
                "quote 1: says",
                "update quote set total = total + 5 where id = ?",
                "update quote set total = total - 5 where id = ?",
                quote.id().value());
    }

    @Test
    void a_price_that_is_not_the_explained_one() {
        foundOut(
                "line 1 is priced",
                "update quote_line set unit_price = unit_price + 1 where quote_id = ? and position = 0",
                "update quote_line set unit_price = unit_price - 1 where quote_id = ? and position = 0",
                quote.id().value());
    }

    @Test
    void a_top_up_without_its_reason() {
        foundOut(
                "with a top-up of",
                "update quote_line_reason set amount = amount + 1 where minimum is not null and quote_line_id in"
                        + " (select id from quote_line where quote_id = ?)",
                "update quote_line_reason set amount = amount - 1 where minimum is not null and quote_line_id in"
                        + " (select id from quote_line where quote_id = ?)",
                quote.id().value());
    }

    @Test
    void a_gap_in_the_numbers() {
        foundOut(
                "numbers of quotes and price books are gapless",
                "update quote set number = 9 where id = ?",
                "update quote set number = 1 where id = ?",
                quote.id().value());
    }
}
