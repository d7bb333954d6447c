package eaveside.margins;

import static eaveside.invoicing.WorkedCompany.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.catalog.SaveServiceLine;
import eaveside.catalog.ServiceLine;
import eaveside.costing.CostRates;
import eaveside.costing.Effort;
import eaveside.costing.SetCostRates;
import eaveside.invoicing.WorkedCompany;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReadLedger;
import eaveside.testing.Bench;
import eaveside.visits.Visit;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/**
 * Published figures as visits signed off and billed, read back from the ledger that they posted to. Each has days of
 * its own. The company's labor hour costs 25 with 25 of overhead, a part 42.
 */
@Tag("database")
class MarginsPublishedExamplesTest {
    private static final LocalDate JOB = LocalDate.of(2026, 3, 3);
    private static final LocalDate MARK_UPS = LocalDate.of(2026, 3, 10);
    private static final LocalDate SEGMENTS = LocalDate.of(2026, 4, 7);

    @RegisterExtension
    static final Bench bench = new Bench();

    private static WorkedCompany company;
    private static ServiceItemId washing;

    @BeforeAll
    static void found() {
        company = new WorkedCompany(bench);
        washing = company.offers(company.arrays, "WASH", WorkedCompany.TODAY);
    }

    @AfterEach
    void books_are_true() {
        bench.verifyBooks();
    }

    private static Effort minutes(int onSite, int loading) {
        return new Effort(onSite, 0, loading, Quantity.zero(Unit.MILE));
    }

    private static void work(LocalDate day, ServiceItemId service, Effort effort, int parts, String billed) {
        bench.clock().to(day);
        Visit visit = company.scheduledFor(service);
        company.signedOff(visit, effort, parts);
        company.billedAt(visit, usd(billed));
    }

    /** What was spent on the day is what its work was charged with: a company without variances, as in the books. */
    private static void spent(LocalDate day, String wages, String overhead) {
        List<PostJournal.Line> entries = new ArrayList<>();
        if (!usd(wages).isZero()) {
            entries.add(PostJournal.Line.debit(new AccountCode("6000"), usd(wages)));
        }
        entries.add(PostJournal.Line.debit(new AccountCode("6200"), usd(overhead)));
        entries.add(PostJournal.Line.credit(new AccountCode("1000"), usd(wages).plus(usd(overhead))));
        bench.get(PostJournal.class)
                .post(new PostJournal.Journal(
                        DocumentId.next(), PostJournal.Type.EXPENSE, day, "Wages and rent", entries, company.office));
    }

    private static MarginReport margin(LocalDate day) {
        return bench.get(ReadMargins.class).margin(new Period(day, day));
    }

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 2: Managerial Accounting (OpenStax,
     * 2019), §4.8, a service job: parts 42 + labor 3 hours × 25 = 75 + overhead 75 = cost 192, billed at 310. The
     * margin of 118 and its rate follow by computation.
     */
    @Test
    void the_service_job() {
        work(JOB, washing, minutes(180, 0), 1, "310");
        spent(JOB, "75", "75");
        MarginReport report = margin(JOB);
        MarginRow row = report.rowOf(company.arrays).orElseThrow();
        assertEquals(usd("310"), row.revenue().amount());
        assertEquals(usd("42"), row.consumables().amount());
        assertEquals(usd("75"), row.labor().amount());
        assertEquals(usd("75"), row.overhead().amount());
        assertEquals(usd("0"), row.travel().amount());
        assertEquals(usd("118"), row.margin().amount());
        assertEquals(Optional.of(Percent.of("38.1")), row.rate());
        assertEquals(usd("118"), report.result().amount());
        assertEquals(
                row.margin().ledgerSum(),
                bench.get(ReadLedger.class).total(row.margin().opens()),
                "the figure opens the entries that were posted");
    }

    /**
     * Source: United States Tax Court, Kikalos v. Commissioner, T.C. Memo. 1998-92 (March 3, 1998), page 15: a mark-up
     * of 25 % is a margin of 20 %.
     *
     * <p>Source: Internal Revenue Service, Publication 334, Tax Guide for Small Business (tax year 2001), chapter 7,
     * Testing Gross Profit Accuracy: net receipts of 300,000 on a cost of 200,000, so half as much again, are a gross
     * profit of 33⅓ %.
     *
     * <p>Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 2: Managerial Accounting (OpenStax,
     * 2019), §3.1: a price of 100 on a variable cost of 20, so five times as much, is a contribution margin ratio of 80
     * %. Here one part of 42 is sold at each of these.
     */
    @Test
    void margin_rates() {
        List<String> prices = List.of("52.50", "63", "210");
        List<String> rates = List.of("20", "33.3", "80");
        for (int i = 0; i < prices.size(); i++) {
            LocalDate day = MARK_UPS.plusDays(i);
            work(day, washing, minutes(0, 0), 1, prices.get(i));
            assertEquals(
                    Optional.of(Percent.of(rates.get(i))), margin(day).total().rate());
        }
    }

    /**
     * Source: Franklin, Graybeal and Cooper, Principles of Accounting, Volume 2: Managerial Accounting (OpenStax,
     * 2019), §10.4, keeping or discontinuing a segment: contribution margins of 532,000, 903,000 and 829,000 less
     * direct fixed expenses of 75,000 each leave product margins of 457,000, 828,000 and 754,000, together 2,039,000.
     * The contribution is billed here, the direct fixed expense is the overhead of 3,000 labor hours at 25, whose labor
     * costs nothing.
     */
    @Test
    void segment_margins_of_the_textbook() {
        UnitPrice mile = UnitPrice.perOne(CurrencyUnit.USD, new BigDecimal("0.70"), Unit.MILE);
        bench.get(SetCostRates.class).set(new CostRates(SEGMENTS, usd("0"), mile, usd("25.00")), company.office);
        ServiceLineId third = bench.get(SaveServiceLine.class)
                .save(new ServiceLine(ServiceLineId.next(), "THIRD", "Third", true, 0), company.office)
                .id();
        List<ServiceLineId> segments = List.of(company.arrays, company.skylights, third);
        List<String> contributions = List.of("532000", "903000", "829000");
        for (int i = 0; i < 3; i++) {
            LocalDate day = SEGMENTS.plusDays(i);
            bench.clock().to(day);
            ServiceItemId service = company.offers(segments.get(i), "SEGMENT-" + i, day);
            work(day, service, minutes(100_000, 80_000), 0, contributions.get(i));
        }
        spent(SEGMENTS.plusDays(2), "0", "225000");
        MarginReport report = bench.get(ReadMargins.class).margin(new Period(SEGMENTS, SEGMENTS.plusDays(2)));
        assertEquals(
                List.of(usd("457000"), usd("828000"), usd("754000")),
                segments.stream()
                        .map(line -> report.rowOf(line).orElseThrow().margin().amount())
                        .toList());
        assertEquals(usd("2039000"), report.total().margin().amount());
        assertEquals(usd("2039000"), report.result().amount());
    }
}
