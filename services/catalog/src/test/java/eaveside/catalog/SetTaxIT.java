package eaveside.catalog;

import static eaveside.catalog.CatalogFixture.BOOKS_FROM;
import static eaveside.catalog.CatalogFixture.OWNER;
import static eaveside.catalog.CatalogFixture.STANDARD;
import static eaveside.catalog.CatalogFixture.standard;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Percent;
import eaveside.kernel.Refusal;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SetTaxIT {
    /** The day that the bench's clock stands on. */
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void found() {
        CatalogFixture.found(bench);
    }

    private static TaxSetting exempt(TaxCode code, LocalDate from) {
        return new TaxSetting(code, TaxCategory.E, Percent.of("0"), from, "Exempt by the owner's setting");
    }

    @Test
    void the_setting_of_a_day_is_the_newest_that_began_by_then() {
        SetTax set = bench.get(SetTax.class);
        TaxSettings read = bench.get(TaxSettings.class);
        LocalDate july = LocalDate.of(2026, 7, 1);
        set.set(standard("8.5", july), OWNER);
        assertEquals(standard("8.25", BOOKS_FROM), read.on(STANDARD, TODAY));
        assertEquals(Percent.of("8.25"), read.on(STANDARD, july.minusDays(1)).rate());
        assertEquals(
                Percent.of("8.5"), bench.get(Catalog.class).tax(STANDARD, july).rate());
        assertThrows(CatalogRefusal.NoTaxOn.class, () -> read.on(STANDARD, BOOKS_FROM.minusDays(1)));
        assertThrows(KernelRefusal.NotFound.class, () -> read.on(new TaxCode("NIL"), TODAY));

        set.set(standard("8.75", july), OWNER);
        set.set(standard("8.750", july), OWNER);
        assertEquals(Percent.of("8.75"), read.on(STANDARD, july).rate(), "one to come can be set again");
        assertEquals(2L, bench.value("select count(*) from tax_setting where code = 'STD' and valid_from = ?", july));
        assertEquals(
                List.of(july, BOOKS_FROM),
                read.all().stream()
                        .filter(setting -> setting.code().equals(STANDARD))
                        .map(TaxSetting::from)
                        .toList());
    }

    @Test
    void days_that_may_have_been_billed_stay_as_they_were() {
        SetTax set = bench.get(SetTax.class);
        TaxCode code = new TaxCode("PAST");
        Refusal never =
                assertThrows(KernelRefusal.TooLate.class, () -> set.set(exempt(code, TODAY.plusYears(11)), OWNER));
        assertEquals(List.of("from"), never.fields());
        set.set(exempt(code, TODAY.minusDays(20)), OWNER);
        set.set(exempt(code, TODAY.minusDays(20)), OWNER);
        for (LocalDate day : List.of(TODAY.minusDays(20), TODAY.minusDays(19), TODAY.minusDays(1))) {
            assertThrows(
                    KernelRefusal.TooEarly.class,
                    () -> set.set(new TaxSetting(code, TaxCategory.S, Percent.of("5"), day, ""), OWNER));
        }
        set.set(new TaxSetting(code, TaxCategory.S, Percent.of("5"), TODAY, ""), OWNER);
        set.set(exempt(code, TODAY.minusDays(40)), OWNER);
        assertEquals(TaxCategory.S, bench.get(TaxSettings.class).on(code, TODAY).category());
        assertEquals(3L, bench.value("select count(*) from tax_setting where code = 'PAST'"));
    }

    @Test
    void the_database_refuses_planted_bad_rows_and_any_change() {
        String insert = "insert into tax_setting (code, valid_from, entry, category, rate, exemption_reason, set_by,"
                + " set_at) values ('STD', '2030-01-01', 1, '%s', %s, '%s', gen_random_uuid(), now())";
        for (String bad : List.of(
                insert.formatted("S", "0", ""),
                insert.formatted("S", "101", ""),
                insert.formatted("E", "5", "why"),
                insert.formatted("E", "0", ""),
                insert.formatted("Z", "0", "why"),
                insert.formatted("X", "0", ""))) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(bad), bad);
            assertTrue(refused.getMessage().contains("check constraint"), bad + ": " + refused.getMessage());
        }
        for (String change : List.of("update tax_setting set rate = 1", "delete from tax_setting")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(change));
            assertTrue(refused.getMessage().contains("permission denied"), refused.getMessage());
            AssertionError backed = assertThrows(AssertionError.class, () -> bench.execute(change));
            assertTrue(String.valueOf(backed.getCause()).contains("append-only"), change);
        }
    }
}
