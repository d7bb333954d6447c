package eaveside.catalog;

import static eaveside.catalog.CatalogFixture.STANDARD;
import static eaveside.catalog.CatalogFixture.panels;
import static eaveside.catalog.CatalogFixture.with;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.customers.SurfaceType;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class ServiceItemTest {
    private static final LocalDate DAY = LocalDate.of(2026, 1, 1);

    @Test
    void standard_minutes_follow_the_quantity_in_any_like_unit() {
        ServiceItem panels = panels(ServiceLineId.next(), "PANEL");
        assertEquals(StandardMinutes.of("120"), panels.minutesFor(Quantity.of(48, Unit.PIECE)));
        ServiceItem roof = new ServiceItem(
                ServiceItemId.next(),
                ServiceLineId.next(),
                "ROOF",
                "Roof cleaned",
                Unit.SQUARE_FOOT,
                StandardMinutes.of("0.05"),
                STANDARD,
                SurfaceType.ROOF,
                "",
                List.of(),
                true,
                0);
        assertEquals(StandardMinutes.of("95"), roof.minutesFor(Quantity.of(1900, Unit.SQUARE_FOOT)));
        // 100 m² are 1076.391042 ft² (1 ft = 0.3048 m exactly; NIST Handbook 44, Appendix C; from memory).
        assertEquals(StandardMinutes.of("53.8196"), roof.minutesFor(Quantity.of(100, Unit.SQUARE_METER)));
        assertThrows(KernelRefusal.UnlikeUnits.class, () -> roof.minutesFor(Quantity.of(3, Unit.PIECE)));
    }

    @Test
    void standard_minutes_have_one_form_and_bounds() {
        assertEquals(StandardMinutes.of("2.50"), StandardMinutes.of("2.5"));
        assertEquals(StandardMinutes.ZERO, StandardMinutes.of("0.000"));
        assertEquals("100 min", StandardMinutes.of("1E2").toString());
        assertThrows(KernelRefusal.Negative.class, () -> StandardMinutes.of("-0.1"));
        assertThrows(KernelRefusal.TooManyDecimals.class, () -> StandardMinutes.of("0.00001"));
    }

    @Test
    void a_service_item_is_counted_as_its_surfaces_are_and_lists_each_item_once() {
        ServiceItem panels = panels(ServiceLineId.next(), "PANEL");
        assertThrows(KernelRefusal.WrongUnit.class, () -> with(panels, "Panels by area", Unit.SQUARE_METER, List.of()));
        StandardConsumable soap = new StandardConsumable(StockItemId.next(), Quantity.of(1, Unit.MILLILITER));
        assertThrows(KernelRefusal.Twice.class, () -> with(panels, "Panels", Unit.PIECE, List.of(soap, soap)));
        assertThrows(
                KernelRefusal.NotPositive.class,
                () -> new StandardConsumable(StockItemId.next(), Quantity.zero(Unit.MILLILITER)));
    }

    @ParameterizedTest
    @ValueSource(strings = {"std", "A B", "-A", "A-", "Ä", "", "ABCDEFGHIJKLMNOPQRSTU"})
    void codes_that_people_cannot_type_are_refused(String code) {
        assertThrows(eaveside.kernel.Refusal.class, () -> new TaxCode(code));
    }

    @ParameterizedTest
    @CsvSource({
        "S, 8.25, ''",
        "S, 100, ''",
        "Z, 0, ''",
        "E, 0, Exempt here",
        "O, 0, Not subject to tax",
        "AE, 0, Reverse charge",
        "G, 0, Export",
        "K, 0, Supply within the area"
    })
    void rate_and_reason_that_fit_the_category(TaxCategory category, String rate, String reason) {
        assertEquals(category, new TaxSetting(STANDARD, category, Percent.of(rate), DAY, reason).category());
    }

    @ParameterizedTest
    @CsvSource({"S, 0, ''", "S, -1, ''", "S, 100.5, ''", "Z, 5, ''", "E, 5, why", "O, 1, why"})
    void a_rate_that_does_not_fit_the_category_is_refused(TaxCategory category, String rate, String reason) {
        assertThrows(
                CatalogRefusal.RateDoesNotFit.class,
                () -> new TaxSetting(STANDARD, category, Percent.of(rate), DAY, reason));
    }

    @ParameterizedTest
    @CsvSource({"S, 5, why", "Z, 0, why", "E, 0, ''", "O, 0, ' '", "AE, 0, ''", "G, 0, ''", "K, 0, ''"})
    void a_reason_that_does_not_fit_the_category_is_refused(TaxCategory category, String rate, String reason) {
        assertThrows(
                CatalogRefusal.ReasonDoesNotFit.class,
                () -> new TaxSetting(STANDARD, category, Percent.of(rate), DAY, reason));
    }
}
