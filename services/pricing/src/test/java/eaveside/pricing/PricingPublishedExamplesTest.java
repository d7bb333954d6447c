package eaveside.pricing;

import static eaveside.pricing.PricingFixture.OWNER;
import static eaveside.pricing.PricingFixture.TODAY;
import static eaveside.pricing.TestLists.each;
import static eaveside.pricing.TestLists.step;
import static eaveside.pricing.TestLists.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitLineId;
import eaveside.testing.Bench;
import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("database")
class PricingPublishedExamplesTest {
    @RegisterExtension
    static final Bench bench = new Bench();

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 2: Managerial Accounting (OpenStax,
     * 2019), §4.8: a service job billed at parts 70 + 3 labor hours × 80 = 310, on a cost of 192 (parts 42, labor 3 ×
     * 25, overhead 75). Priced here from a published price book; the margin and mark-up follow by computation: 118 ÷
     * 310 and 118 ÷ 192.
     */
    @Test
    void the_service_job_is_billed_at_310() {
        PricingFixture company = new PricingFixture(bench);
        ServiceItemId hours = ServiceItemId.next();
        ServiceItemId parts = ServiceItemId.next();
        company.sell(hours, company.arrayLine, "HOUR", "Service hour", null, "60", Unit.HOUR, false);
        company.sell(parts, company.arrayLine, "PARTS", "Parts", null, "0", Unit.PIECE, false);
        PriceBook book = company.publish(new PriceList(
                "Service jobs",
                TODAY,
                usd("0"),
                Percent.of("0"),
                List.of(),
                List.of(
                        new ServiceItemPrice(hours, List.of(step("0", "80", Unit.HOUR)), List.of()),
                        new ServiceItemPrice(parts, List.of(each("0", "70")), List.of()))));
        PricedWork priced = bench.get(PriceWork.class)
                .price(
                        book.id(),
                        List.of(
                                new WorkLine(VisitLineId.next(), parts, Quantity.of(1, Unit.PIECE), Map.of(), null),
                                new WorkLine(VisitLineId.next(), hours, Quantity.of(3, Unit.HOUR), Map.of(), null)));
        assertEquals(
                List.of(usd("70"), usd("240")),
                priced.lines().stream().map(PricedWork.Line::net).toList());
        assertEquals(usd("310"), priced.total());
        Earnings earnings = new Earnings(priced.total(), usd("192"));
        assertEquals(usd("118"), earnings.profit());
        assertEquals(Percent.of("38.06"), earnings.margin().orElseThrow());
        assertEquals(Percent.of("61.46"), earnings.markUp().orElseThrow());
        assertEquals(OWNER, book.publishedBy());
        bench.verifyBooks();
    }

    /**
     * Source: United States Tax Court, Kikalos v. Commissioner, T.C. Memo. 1998-92 (March 3, 1998), page 15: a margin
     * of 20 % is a mark-up of 25 %.
     *
     * <p>Source: Internal Revenue Service, Publication 334, Tax Guide for Small Business (tax year 2001), chapter 7,
     * Testing Gross Profit Accuracy: net receipts of 300,000 on a cost of 200,000 are a gross profit of 33⅓ %. The
     * mark-up of 50 % follows by computation: 100,000 ÷ 200,000.
     *
     * <p>Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 2: Managerial Accounting (OpenStax,
     * 2019), §3.1: a price of 100 on a variable cost of 20 is a contribution margin ratio of 80 %. The mark-up of 400 %
     * follows by computation: 80 ÷ 20.
     */
    @Test
    void mark_up_and_margin() {
        Map<String, String> table = Map.of("25", "20", "50", "33.33", "400", "80");
        table.forEach((markUp, margin) -> {
            Money cost = Money.of(CurrencyUnit.USD, "200.00");
            Money price = cost.plus(Percent.of(markUp).of(cost));
            Earnings earnings = new Earnings(price, cost);
            assertEquals(Percent.of(markUp), earnings.markUp().orElseThrow());
            assertEquals(Percent.of(margin), earnings.margin().orElseThrow());
        });
        assertEquals(
                BigDecimal.ZERO,
                new Earnings(usd("5"), usd("5")).margin().orElseThrow().value());
        assertEquals(true, new Earnings(usd("0"), usd("5")).margin().isEmpty());
    }
}
