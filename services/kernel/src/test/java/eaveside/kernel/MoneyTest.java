package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.Random;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MoneyTest {
    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    /** ISO 4217 minor units: USD 2, JPY 0, KWD 3. */
    @ParameterizedTest
    @CsvSource({"USD,0.01,0.001", "JPY,1,0.1", "KWD,0.001,0.0001"})
    void an_amount_is_never_finer_than_the_minor_unit(String code, String exact, String tooFine) {
        CurrencyUnit currency = CurrencyUnit.of(code);
        assertEquals(new BigDecimal(exact), Money.of(currency, exact).amount());
        assertThrows(KernelRefusal.TooManyDecimals.class, () -> Money.of(currency, tooFine));
    }

    @Test
    void ties_round_away_from_zero_on_both_sides() {
        assertEquals(usd("0.13"), Money.rounded(CurrencyUnit.USD, new BigDecimal("0.125")));
        assertEquals(usd("-0.13"), Money.rounded(CurrencyUnit.USD, new BigDecimal("-0.125")));
    }

    @Test
    void a_number_that_would_fill_the_memory_is_refused_first() {
        BigDecimal huge = new BigDecimal("1E+999999999");
        assertThrows(KernelRefusal.TooLarge.class, () -> Money.of(CurrencyUnit.USD, huge));
        assertThrows(KernelRefusal.TooLarge.class, () -> Quantity.of(huge, Unit.PIECE));
        assertThrows(KernelRefusal.TooLarge.class, () -> Percent.of(huge));
        assertThrows(KernelRefusal.TooLarge.class, () -> UnitPrice.perOne(CurrencyUnit.USD, huge, Unit.PIECE));
    }

    @Test
    void as_many_of_the_largest_amounts_as_are_ever_stored_can_be_added_up() {
        Money largest = usd("999999999999.99").bounded("amount");
        assertThrows(
                KernelRefusal.TooLarge.class, () -> largest.plus(usd("0.01")).bounded("amount"));
        Money sum = Money.of(CurrencyUnit.USD, largest.amount().multiply(new BigDecimal("1E9")));
        assertEquals(new BigDecimal("999999999999990000000.00"), sum.amount());
        assertEquals(new BigDecimal("1999999999999980000000.00"), sum.plus(sum).amount());
    }

    @Test
    void unlike_currencies_refuse_arithmetic() {
        Money euro = Money.of(CurrencyUnit.EUR, "1.00");
        assertThrows(KernelRefusal.UnlikeCurrencies.class, () -> usd("1.00").plus(euro));
        assertThrows(KernelRefusal.UnlikeCurrencies.class, () -> usd("1.00").compareTo(euro));
    }

    @Test
    void cents_left_over_go_to_the_largest_remainders() {
        List<Money> parts = usd("100.00").split(List.of(new BigDecimal(1), new BigDecimal(1), new BigDecimal(1)));
        assertEquals(List.of(usd("33.34"), usd("33.33"), usd("33.33")), parts);
        assertEquals(
                List.of(usd("-0.01"), usd("-0.02")),
                usd("-0.03").split(List.of(new BigDecimal("1"), new BigDecimal("2"))));
        assertEquals(List.of(usd("0.02"), usd("0.01")), usd("0.03").split(List.of(BigDecimal.ZERO, BigDecimal.ZERO)));
    }

    @ParameterizedTest
    @ValueSource(longs = {1, 20_261_125, 77})
    void parts_always_add_up_and_stay_within_a_cent_of_their_share(long seed) {
        Random random = new Random(seed);
        for (int run = 0; run < 500; run++) {
            Money total = Money.of(CurrencyUnit.USD, BigDecimal.valueOf(random.nextInt(2_000_001) - 1_000_000, 2));
            List<BigDecimal> weights = new ArrayList<>();
            for (int i = random.nextInt(9) + 1; i > 0; i--) {
                weights.add(BigDecimal.valueOf(random.nextInt(1000), 1));
            }
            List<Money> parts = total.split(weights);
            assertEquals(total, Money.sum(CurrencyUnit.USD, parts), "seed " + seed);
            BigDecimal sum = weights.stream().reduce(BigDecimal.ZERO, BigDecimal::add);
            for (int i = 0; sum.signum() > 0 && i < parts.size(); i++) {
                BigDecimal share = Exact.ratio(total.amount(), weights.get(i), sum);
                assertTrue(
                        share.subtract(parts.get(i).amount()).abs().compareTo(new BigDecimal("0.01")) < 0,
                        "seed " + seed + " run " + run);
            }
        }
    }
}
