package eaveside.costing;

import static eaveside.costing.CostingFixture.OWNER;
import static eaveside.costing.CostingFixture.driven;
import static eaveside.costing.CostingFixture.onSite;
import static eaveside.costing.CostingFixture.rates;
import static eaveside.costing.CostingFixture.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.catalog.StandardMinutes;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.testing.Bench;
import java.time.LocalDate;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("database")
class CostingPublishedExamplesTest {
    private static final ServiceLineId LINE = ServiceLineId.next();

    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void found() {
        CostingFixture.found(bench);
    }

    private static AppliedCost apply(LocalDate day, Effort effort) {
        return bench.get(ApplyVisitCost.class)
                .apply(day, effort, List.of(new LineWork(LINE, StandardMinutes.of(180))), List.of());
    }

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 2: Managerial Accounting (OpenStax, 2019),
     * §4.8, a service job: parts 42, labor 3 hours at 25, overhead 75; cost 192. The overhead of 75 over 3 hours is 25 an
     * hour; the parts are inventory's and only added here.
     *
     * <p>Source: Internal Revenue Service, Notices 2024-08, 2025-5 and 2026-10, business standard mileage rates of 2024,
     * 2025 and 2026: 67, 70 and 72.5 cents a mile, each in force in its own year.
     */
    @Test
    void the_service_job_and_the_standard_mileage() {
        SetCostRates set = bench.get(SetCostRates.class);
        bench.clock().to(LocalDate.of(2023, 12, 1));
        set.set(rates(LocalDate.of(2024, 1, 1), "25", "0.67", "25"), OWNER);
        set.set(rates(LocalDate.of(2025, 1, 1), "25", "0.70", "25"), OWNER);
        set.set(rates(LocalDate.of(2026, 1, 1), "25", "0.725", "25"), OWNER);

        AppliedCost job = apply(LocalDate.of(2026, 3, 2), onSite(180));
        assertEquals(usd("75"), job.labor());
        assertEquals(usd("75"), job.overhead());
        Money parts = usd("42");
        assertEquals(usd("192"), job.total().plus(parts));
        assertEquals(List.of(new LineCost(LINE, usd("75"), usd("0"), usd("75"))), job.lines());

        assertEquals(usd("67"), apply(LocalDate.of(2024, 12, 31), driven("100")).travel());
        assertEquals(usd("70"), apply(LocalDate.of(2025, 1, 1), driven("100")).travel());
        assertEquals(
                usd("72.50"), apply(LocalDate.of(2026, 12, 31), driven("100")).travel());
    }
}
