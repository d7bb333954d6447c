package eaveside.costing;

import static eaveside.costing.CostingFixture.OWNER;
import static eaveside.costing.CostingFixture.rates;
import static eaveside.costing.CostingFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SetCostRatesIT {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);
    private static final LocalDate FIRST = LocalDate.of(2026, 2, 1);

    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void found() {
        CostingFixture.found(bench);
    }

    @BeforeEach
    void first_rates() {
        bench.clock().to(TODAY);
        bench.get(SetCostRates.class).set(rates(FIRST, "30", "0.725", "8"), OWNER);
    }

    @AfterEach
    void clear() {
        bench.execute("alter table cost_rates disable trigger user");
        bench.execute("delete from cost_rates");
        bench.execute("alter table cost_rates enable trigger user");
    }

    @Test
    void the_rates_of_a_day_are_the_newest_that_began_by_then() {
        bench.get(SetCostRates.class).set(rates(TODAY.plusDays(30), "32.12", "0.7255", "8"), OWNER);
        ReadCostRates read = bench.get(ReadCostRates.class);
        assertThrows(CostingRefusal.NoRatesOn.class, () -> read.on(FIRST.minusDays(1)));
        assertEquals(rates(FIRST, "30", "0.725", "8"), read.on(FIRST));
        assertEquals(usd("30"), read.on(TODAY.plusDays(29)).laborPerHour());
        assertEquals(usd("32.12"), read.on(TODAY.plusDays(30)).laborPerHour());
        assertEquals(
                List.of(TODAY.plusDays(30), FIRST),
                read.all().stream().map(CostRates::from).toList());
    }

    @Test
    void the_same_rates_again_are_a_retry() {
        SetCostRates set = bench.get(SetCostRates.class);
        set.set(rates(FIRST, "30.00", "0.7250", "8.0"), OWNER);
        assertEquals(1L, bench.value("select count(*) from cost_rates"));
        LocalDate soon = TODAY.plusDays(3);
        set.set(rates(soon, "30", "0.725", "8"), OWNER);
        set.set(rates(soon, "30", "0.725", "8"), OWNER);
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event where action = 'rates.set' and subject = ?",
                        soon.toString()));
    }

    @Test
    void rates_that_may_have_been_used_stay() {
        SetCostRates set = bench.get(SetCostRates.class);
        for (LocalDate day : List.of(FIRST, FIRST.plusDays(1), TODAY.minusDays(1))) {
            assertThrows(KernelRefusal.TooEarly.class, () -> set.set(rates(day, "31", "0.725", "8"), OWNER));
        }
        set.set(rates(TODAY, "31", "0.725", "8"), OWNER);
        assertThrows(KernelRefusal.TooEarly.class, () -> set.set(rates(TODAY, "32", "0.725", "8"), OWNER));
        assertEquals(usd("31"), bench.get(ReadCostRates.class).on(TODAY).laborPerHour());
        set.set(rates(FIRST.minusDays(10), "29", "0.70", "8"), OWNER);
        assertEquals(
                usd("29"), bench.get(ReadCostRates.class).on(FIRST.minusDays(1)).laborPerHour());
    }

    @Test
    void rates_to_come_can_be_set_again_and_the_last_counts() {
        SetCostRates set = bench.get(SetCostRates.class);
        LocalDate soon = TODAY.plusDays(1);
        set.set(rates(soon, "41", "0.725", "8"), OWNER);
        set.set(rates(soon, "14", "0.725", "8"), OWNER);
        set.set(rates(soon, "41", "0.725", "8"), OWNER);
        assertEquals(usd("41"), bench.get(ReadCostRates.class).on(soon).laborPerHour());
        assertEquals(2, bench.get(ReadCostRates.class).all().size());
        assertEquals(3L, bench.value("select count(*) from cost_rates where valid_from = ?", soon));
    }

    @Test
    void rates_that_no_visit_could_be_costed_at_are_refused_by_their_fields() {
        SetCostRates set = bench.get(SetCostRates.class);
        LocalDate later = TODAY.plusDays(9);
        var refused =
                assertThrows(KernelRefusal.TooLarge.class, () -> set.set(rates(later, "41", "1000000000", "8"), OWNER));
        assertEquals(List.of("travelPerDistance"), refused.fields());
        var hours = assertThrows(
                KernelRefusal.Several.class, () -> set.set(rates(later, "1000000000", "0.7", "1000000000"), OWNER));
        assertEquals(List.of("laborPerHour", "overheadPerHour"), hours.fields());
        var never = assertThrows(
                KernelRefusal.TooLate.class,
                () -> set.set(rates(TODAY.plusYears(10).plusDays(1), "41", "1", "8"), OWNER));
        assertEquals(List.of("from"), never.fields());
        set.set(rates(later, "41", "999999999", "8"), OWNER);
    }

    /** Rates that were set before there was a bound, sent once more. */
    @Test
    void rates_that_are_stored_are_answered_again_whatever_they_are() {
        bench.execute("""
                insert into cost_rates (valid_from, entry, labor_per_hour, travel_amount, travel_base, travel_unit,
                  overhead_per_hour, set_by, set_at)
                values ('1990-01-01', 1, 2000000000, 0.725, 1, 'SMI', 8, ?, now())
                """, OWNER.value());
        bench.get(SetCostRates.class).set(rates(LocalDate.of(1990, 1, 1), "2000000000", "0.725", "8"), OWNER);
        assertEquals(1L, bench.value("select count(*) from cost_rates where valid_from = '1990-01-01'"));
    }

    @Test
    void the_rate_in_another_currency_than_the_others_is_told() {
        Money dollars = Money.of(CurrencyUnit.USD, "30");
        Money euros = Money.of(CurrencyUnit.EUR, "30");
        UnitPrice perMile = UnitPrice.perOne(CurrencyUnit.USD, BigDecimal.ONE, Unit.MILE);
        UnitPrice perMileInEuros = UnitPrice.perOne(CurrencyUnit.EUR, BigDecimal.ONE, Unit.MILE);
        assertEquals("laborPerHour", odd(euros, perMile, dollars));
        assertEquals("travelPerDistance", odd(dollars, perMileInEuros, dollars));
        assertEquals("overheadPerHour", odd(dollars, perMile, euros));
    }

    private static String odd(Money labor, UnitPrice travel, Money overhead) {
        return assertThrows(CostingRefusal.MixedCurrencies.class, () -> new CostRates(TODAY, labor, travel, overhead))
                .fields()
                .getFirst();
    }

    @Test
    void another_currency_is_refused() {
        CostRates euro = new CostRates(
                TODAY,
                Money.of(CurrencyUnit.EUR, "30"),
                UnitPrice.perOne(CurrencyUnit.EUR, BigDecimal.ONE, Unit.KILOMETER),
                Money.of(CurrencyUnit.EUR, "8"));
        assertThrows(
                CostingRefusal.MixedCurrencies.class,
                () -> bench.get(SetCostRates.class).set(euro, OWNER));
    }

    @Test
    void rivals_for_one_day_take_turns() throws Exception {
        LocalDate soon = TODAY.plusDays(2);
        try (ExecutorService pool = Executors.newFixedThreadPool(4)) {
            List<Callable<Boolean>> rivals = new ArrayList<>();
            for (int i = 1; i <= 8; i++) {
                String labor = "4" + i;
                rivals.add(() -> {
                    bench.get(SetCostRates.class).set(rates(soon, labor, "0.725", "8"), OWNER);
                    return true;
                });
            }
            for (Future<Boolean> rival : pool.invokeAll(rivals)) {
                assertTrue(rival.get());
            }
        }
        assertEquals(8L, bench.value("select count(distinct entry) from cost_rates where valid_from = ?", soon));
    }

    @Test
    void the_database_refuses_bad_rates_and_any_change() {
        String insert = "insert into cost_rates (valid_from, entry, labor_per_hour, travel_amount, travel_base,"
                + " travel_unit, overhead_per_hour, set_by, set_at) values ('2026-05-01', 1, %s, %s, %s, '%s', %s,"
                + " gen_random_uuid(), now())";
        for (String bad : List.of(
                insert.formatted("-1", "1", "1", "SMI", "1"),
                insert.formatted("1", "-1", "1", "SMI", "1"),
                insert.formatted("1", "1", "0", "SMI", "1"),
                insert.formatted("1", "1", "1", "LTR", "1"),
                insert.formatted("1", "1", "1", "SMI", "-1"))) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(bad), bad);
            assertTrue(refused.getMessage().contains("check constraint"), refused.getMessage());
        }
        for (String change : List.of("update cost_rates set labor_per_hour = 1", "delete from cost_rates")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(change));
            assertTrue(refused.getMessage().contains("permission denied"), refused.getMessage());
            AssertionError backed = assertThrows(AssertionError.class, () -> bench.execute(change));
            assertTrue(String.valueOf(backed.getCause()).contains("append-only"), change);
        }
    }
}
