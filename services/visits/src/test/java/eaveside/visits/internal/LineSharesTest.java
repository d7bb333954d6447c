package eaveside.visits.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.catalog.StandardConsumable;
import eaveside.catalog.StandardMinutes;
import eaveside.inventory.Draw;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.visits.VisitRefusal;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Random;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LineSharesTest {
    private static final ServiceLineId ARRAYS = ServiceLineId.next();
    private static final ServiceLineId SKYLIGHTS = ServiceLineId.next();
    private static final StockItemId SOAP = StockItemId.next();
    private static final Draw OF_SOAP = new Draw(SOAP, null, Quantity.of(16, Unit.US_FLUID_OUNCE));
    private static final Draw OF_RAGS = new Draw(StockItemId.next(), null, Quantity.of(1, Unit.PIECE));

    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    private static WorkLine work(
            ServiceLineId line, int planned, int done, String minutes, StandardConsumable... consumables) {
        return new WorkLine(
                line,
                null,
                Quantity.of(planned, Unit.PIECE),
                Quantity.of(done, Unit.PIECE),
                StandardMinutes.of(minutes),
                List.of(consumables));
    }

    private static StandardConsumable soap(String quantity, Unit unit) {
        return new StandardConsumable(SOAP, Quantity.of(quantity, unit));
    }

    @Test
    void the_line_that_the_technician_names_takes_it_all() {
        LineShares shares = new LineShares(List.of(work(ARRAYS, 48, 46, "2"), work(SKYLIGHTS, 6, 6, "6")));
        assertEquals(Map.of(SKYLIGHTS, usd("8.00")), shares.share(usd("8.00"), OF_SOAP, SKYLIGHTS));
        assertThrows(VisitRefusal.NotOnVisit.class, () -> shares.share(usd("8.00"), OF_SOAP, ServiceLineId.next()));
    }

    /** 46 panels × 0.25 = 11.5 oz, 10 skylights × 0.5 = 5 oz: 8.00 × 11.5 ÷ 16.5 = 5.576, the rest 2.424. */
    @Test
    void otherwise_by_what_the_units_done_take_by_standard() {
        LineShares shares = new LineShares(List.of(
                work(ARRAYS, 48, 46, "2", soap("0.25", Unit.US_FLUID_OUNCE)),
                work(SKYLIGHTS, 6, 6, "6", soap("0.5", Unit.US_FLUID_OUNCE)),
                work(SKYLIGHTS, 0, 4, "6", soap("0.5", Unit.US_FLUID_OUNCE))));
        assertEquals(Map.of(ARRAYS, usd("5.58"), SKYLIGHTS, usd("2.42")), shares.share(usd("8.00"), OF_SOAP, null));
    }

    @Test
    void standards_in_other_units_weigh_the_same() {
        LineShares shares = new LineShares(List.of(
                work(ARRAYS, 1, 1, "2", soap("128", Unit.US_FLUID_OUNCE)),
                work(SKYLIGHTS, 1, 1, "6", soap("1", Unit.US_GALLON))));
        assertEquals(Map.of(ARRAYS, usd("4.00"), SKYLIGHTS, usd("4.00")), shares.share(usd("8.00"), OF_SOAP, null));
    }

    @Test
    void without_a_standard_by_minutes_done_then_planned_then_evenly() {
        LineShares done = new LineShares(List.of(work(ARRAYS, 48, 30, "2"), work(SKYLIGHTS, 6, 5, "6")));
        assertEquals(Map.of(ARRAYS, usd("2.00"), SKYLIGHTS, usd("1.00")), done.share(usd("3.00"), OF_RAGS, null));
        LineShares planned = new LineShares(List.of(work(ARRAYS, 48, 0, "2"), work(SKYLIGHTS, 8, 0, "6")));
        assertEquals(Map.of(ARRAYS, usd("2.00"), SKYLIGHTS, usd("1.00")), planned.share(usd("3.00"), OF_RAGS, null));
        LineShares even = new LineShares(List.of(work(ARRAYS, 48, 0, "0"), work(SKYLIGHTS, 8, 0, "0")));
        assertEquals(Map.of(ARRAYS, usd("1.50"), SKYLIGHTS, usd("1.50")), even.share(usd("3.00"), OF_RAGS, null));
    }

    @ParameterizedTest
    @ValueSource(longs = {3, 20_261_125, 90})
    void shares_always_add_up(long seed) {
        Random random = new Random(seed);
        for (int run = 0; run < 300; run++) {
            List<WorkLine> work = new ArrayList<>();
            for (int i = random.nextInt(6) + 1; i > 0; i--) {
                work.add(work(ServiceLineId.next(), random.nextInt(50), random.nextInt(50), "" + random.nextInt(9)));
            }
            Money cost = usd(random.nextInt(10_000) + "." + (10 + random.nextInt(90)));
            assertEquals(
                    cost,
                    Money.sum(
                            CurrencyUnit.USD,
                            new LineShares(work).share(cost, OF_RAGS, null).values()),
                    "seed " + seed + " run " + run);
        }
    }

    @Test
    void a_visit_without_work_has_nothing_to_share_over() {
        assertThrows(KernelRefusal.NoRows.class, () -> new LineShares(List.of()));
    }
}
