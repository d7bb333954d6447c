package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.ledger.Company.Measures;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Locale;
import java.util.Random;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class NotationTest {
    private static final Notation US = new Notation(Locale.US, CurrencyUnit.USD);
    private static final Notation GERMAN = new Notation(Locale.of("en", "DE"), CurrencyUnit.EUR);
    private static final Notation SWISS = new Notation(Locale.of("de", "CH"), CurrencyUnit.of("CHF"));
    private static final Notation SWEDISH = new Notation(Locale.of("sv", "SE"), CurrencyUnit.of("SEK"));

    @ParameterizedTest
    @CsvSource(
            delimiter = '|',
            value = {
                "12.50 | 12.50",
                "1,250 | 1250",
                "$1,200.00 | 1200.00",
                "USD 1200 | 1200",
                "−$3.50 | -3.50",
                "-3.5 | -3.5",
                ".5 | 0.5",
                "1,234,567.891 | 1234567.891",
                "0 | 0"
            })
    void a_company_in_the_United_States_reads_what_it_writes(String typed, BigDecimal meant) {
        assertEquals(meant, US.amount("amount", typed));
    }

    @Test
    void a_percentage_is_read_with_its_sign_and_nothing_else_is() {
        for (String typed : new String[] {"6.35", "6.35%", "6.35 %"}) {
            assertEquals(new BigDecimal("6.35"), US.percentage("rate", typed));
        }
        for (String typed : new String[] {"10%", "10 %", "$10%", "%10"}) {
            assertThrows(KernelRefusal.Unfit.class, () -> US.amount("amount", typed), typed);
            assertThrows(KernelRefusal.Unfit.class, () -> US.decimal("quantity", typed), typed);
        }
        assertThrows(KernelRefusal.Unfit.class, () -> US.percentage("rate", "$10"));
        assertEquals(
                "Rate 6,35 can be read in two ways. Write it like 1,234.5",
                assertThrows(KernelRefusal.Unfit.class, () -> US.percentage("rate", "6,35%"))
                        .problems()
                        .getFirst()
                        .text("Rate"));
        assertThrows(KernelRefusal.Unfit.class, () -> US.decimal("quantity", "$14"));
        assertEquals(
                "Quantity is no percentage. Write it without the %",
                assertThrows(KernelRefusal.Unfit.class, () -> US.decimal("quantity", "10%"))
                        .problems()
                        .getFirst()
                        .text("Quantity"));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"12,50", "12,5", "1,25", "0,125", "1.200,50", "1,2,3", "12,5000", "1 250", "1'250", "01,250"})
    void what_can_be_read_in_two_ways_is_refused_by_its_field(String typed) {
        var refusal = assertThrows(KernelRefusal.Unfit.class, () -> US.decimal("amount", typed));

        assertEquals(java.util.List.of("amount"), refusal.fields());
        assertEquals("Amount", refusal.problems().getFirst().text("Amount").split(" ")[0]);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "twelve",
                "",
                "--1",
                "1e5",
                "12.50.1",
                "0x10",
                "12$50",
                "1USD2",
                "١٢",
                "1234567890123",
                "0.12345678901"
            })
    void what_is_no_number_is_refused(String typed) {
        assertThrows(KernelRefusal.Unfit.class, () -> US.amount("amount", typed));
    }

    @Test
    void elsewhere_the_company_s_own_signs_count() {
        assertEquals(new BigDecimal("12.50"), GERMAN.decimal("amount", "12,50"));
        assertEquals(new BigDecimal("1250"), GERMAN.decimal("amount", "1.250"));
        assertEquals(new BigDecimal("1250.75"), SWISS.decimal("amount", "1’250.75"));
        assertEquals(new BigDecimal("1250.75"), SWEDISH.decimal("amount", "1 250,75"));
        assertThrows(KernelRefusal.Unfit.class, () -> GERMAN.decimal("amount", "12.50"));
    }

    /** Whatever it prints, it reads: with a seed, so that a failure can be had again. */
    @ParameterizedTest
    @ValueSource(longs = {1, 20261126, 424242})
    void what_it_prints_it_reads(long seed) {
        Random random = new Random(seed);
        for (Notation notation : new Notation[] {US, GERMAN, SWISS, SWEDISH}) {
            for (int i = 0; i < 200; i++) {
                BigDecimal amount = BigDecimal.valueOf(random.nextLong(-999_999_999_99L, 999_999_999_99L), 2);
                Money money = Money.of(notation.currency(), amount);
                String told = "seed " + seed + ", " + notation.locale() + ", " + amount;
                assertEquals(0, amount.compareTo(notation.amount("a", notation.money(money))), told);
                assertEquals(0, amount.compareTo(notation.decimal("a", notation.number(amount, 6))), told);
                assertEquals(0, amount.compareTo(notation.decimal("a", notation.plain(amount))), told);
            }
        }
    }

    @Test
    void a_sentence_tells_its_dates_as_pages_do() {
        assertEquals("Not before Mar 2, 2026", US.sentence("Not before 2026-03-02"));
        assertEquals("All of its 10,000\u00a0grains in 3 rows", US.sentence("All of its 10000\u00a0GRN in 3 rows"));
        assertEquals("There are 7.340,333333\u00a0grains", GERMAN.sentence("There are 7340.333333\u00a0GRN"));
        assertEquals("0.0000001\u00a0GRN", US.sentence("0.0000001\u00a0GRN"), "what is no quantity stays, too");
        assertEquals("STUDIO 54 BAR", US.sentence("STUDIO 54 BAR"), "what people wrote stays");
        assertEquals("Not before 2 Mar 2026", GERMAN.sentence("Not before 2026-03-02"));
        assertEquals("The part 2026-13-40 is no date", US.sentence("The part 2026-13-40 is no date"));
    }

    /** A US fluid ounce is 29.5735295625 mL: NIST Handbook 44, Appendix C. */
    @Test
    void a_sentence_tells_quantities_in_what_the_company_measures_in() {
        Notation metric = new Notation(Locale.US, CurrencyUnit.USD, Measures.METRIC);
        assertEquals(
                "18,927.058\u00a0mL are there",
                metric.sentence("640\u00a0OZA are there"),
                "640 × 29.5735295625 = 18,927.05892");
        assertEquals("0.999\u00a0L", metric.sentence("0.264169\u00a0GLL"), "a liter would be more than that");
        assertEquals("1\u00a0L", metric.sentence("0.264172\u00a0GLL"));
        assertEquals("3\u00a0mL", metric.sentence("0.101442\u00a0OZA"), "as it was typed: 3 mL");
        assertEquals("10,000\u00a0grains of 12.5\u00a0mL", metric.sentence("10000\u00a0GRN of 12.5\u00a0MLT"));
    }

    /** The thirtieth of February is no date, whatever it looks like. */
    @Test
    void a_sentence_stays_as_it_is_where_it_names_no_day_of_the_calendar() {
        assertEquals("Not on 2026-02-30", US.sentence("Not on 2026-02-30"));
    }

    @Test
    void dates_come_as_the_browser_sends_them_or_as_pages_print_them() {
        assertEquals(LocalDate.of(2026, 3, 2), US.date("date", "2026-03-02"));
        assertEquals(LocalDate.of(2026, 3, 2), US.date("date", "Mar 2, 2026"));
        assertThrows(KernelRefusal.Unfit.class, () -> US.date("date", "02/30/2026"));
        assertThrows(KernelRefusal.Unfit.class, () -> US.date("date", "9999-01-01"));
    }

    @Test
    void whole_numbers_have_bounds() {
        assertEquals(1250, US.integer("count", "1,250", 0, 5000));
        assertThrows(KernelRefusal.Unfit.class, () -> US.integer("count", "1.5", 0, 5000));
        var refusal = assertThrows(KernelRefusal.Unfit.class, () -> US.integer("count", "5001", 0, 5000));
        assertTrue(refusal.text().contains("between 0 and 5,000"), refusal.text());
    }
}
