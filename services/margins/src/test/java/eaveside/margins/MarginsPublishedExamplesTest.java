package eaveside.margins;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.ServiceLineId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.CostKind;
import eaveside.ledger.ReadBalances.LineBalance;
import eaveside.margins.internal.MarginSheet;
import eaveside.offerings.ServiceLine;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MarginsPublishedExamplesTest {
    private static Money usd(String amount) {
        return Money.of(CurrencyUnit.USD, amount);
    }

    private static MarginReport report(List<ServiceLine> lines, List<LineBalance> balances) {
        return new MarginSheet(Period.of(YearMonth.of(2026, 3)), CurrencyUnit.USD, List.of(), balances).report(lines);
    }

    private static LineBalance revenue(ServiceLine line, String amount) {
        return new LineBalance(
                AccountRole.REVENUE, line.id(), null, false, usd(amount).negated());
    }

    private static LineBalance cost(ServiceLine line, CostKind kind, String amount) {
        return new LineBalance(AccountRole.COST_OF_SERVICES, line.id(), kind, false, usd(amount));
    }

    private static ServiceLine line(String code) {
        return new ServiceLine(ServiceLineId.next(), code, code, true, 0);
    }

    /**
     * OpenStax, Principles of Accounting, Volume 2, segment reporting: contributions of 532,000, 903,000 and 829,000 less
     * direct fixed costs of 75,000 each leave segment margins of 457,000, 828,000 and 754,000. The contribution stands as
     * revenue here, the direct fixed cost as overhead.
     */
    @Test
    void segment_margins_of_the_textbook() {
        List<ServiceLine> lines = List.of(line("A"), line("B"), line("C"));
        List<LineBalance> balances = new ArrayList<>();
        List<String> contributions = List.of("532000", "903000", "829000");
        for (int i = 0; i < 3; i++) {
            balances.add(revenue(lines.get(i), contributions.get(i)));
            balances.add(cost(lines.get(i), CostKind.OVERHEAD, "75000"));
        }
        MarginReport report = report(lines, balances);
        assertEquals(
                List.of(usd("457000"), usd("828000"), usd("754000")),
                report.lines().stream().map(l -> l.row().margin().amount()).toList());
        assertEquals(usd("2039000"), report.total().margin().amount());
        assertEquals(usd("2039000"), report.result().amount());
    }

    /** Retail table of mark-ups and margins: a mark-up of 25, 50, 100 and 300 % is a margin of 20, 33⅓, 50 and 75 %. */
    @ParameterizedTest
    @CsvSource({"125, 20", "150, 33.3", "200, 50", "400, 75"})
    void margin_rates(String price, String rate) {
        ServiceLine line = line("A");
        MarginReport report =
                report(List.of(line), List.of(revenue(line, price), cost(line, CostKind.CONSUMABLES, "100")));
        assertEquals(Optional.of(Percent.of(rate)), report.total().rate());
    }

    /** OpenStax, Principles of Accounting, Volume 2, §4.8, service job: parts 42 + labour 75 + overhead 75 = 192; billed 310. */
    @Test
    void the_service_job() {
        ServiceLine line = line("A");
        MarginRow row = report(
                        List.of(line),
                        List.of(
                                revenue(line, "310"),
                                cost(line, CostKind.CONSUMABLES, "42"),
                                cost(line, CostKind.LABOUR, "75"),
                                cost(line, CostKind.OVERHEAD, "75")))
                .total();
        assertEquals(usd("118"), row.margin().amount());
        assertEquals(usd("0"), row.travel().amount());
        assertEquals(Optional.of(Percent.of("38.1")), row.rate());
    }
}
