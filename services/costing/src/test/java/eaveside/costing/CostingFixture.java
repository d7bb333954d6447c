package eaveside.costing;

import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.UserId;
import eaveside.ledger.Company;
import eaveside.ledger.FoundCompany;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.joda.money.CurrencyUnit;

/** A founded company and the small language of the costing tests. */
final class CostingFixture {
    static final UserId OWNER = UserId.next();

    private CostingFixture() {}

    static void found(Bench bench) {
        bench.employ(OWNER.value());
        bench.get(FoundCompany.class)
                .found(new Company(
                        "Gutterby Exterior Care",
                        new Company.Address("1 Ladder Lane", "Gutterby", "", "00001", "US"),
                        "office@example.com",
                        "555-0100",
                        "",
                        "USD",
                        "America/Los_Angeles",
                        Company.Measures.US,
                        LocalDate.of(2026, 1, 1)));
    }

    static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    static CostRates rates(LocalDate from, String labor, String perMile, String overhead) {
        return new CostRates(
                from,
                usd(labor),
                UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal(perMile), Unit.MILE),
                usd(overhead));
    }

    static Effort onSite(int minutes) {
        return new Effort(minutes, 0, 0, Quantity.zero(Unit.MILE));
    }

    static Effort driven(String miles) {
        return new Effort(0, 0, 0, Quantity.of(miles, Unit.MILE));
    }
}
