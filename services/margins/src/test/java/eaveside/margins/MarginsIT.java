package eaveside.margins;

import static eaveside.invoicing.WorkedCompany.usd;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.WorkedCompany;
import eaveside.kernel.DocumentId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountType;
import eaveside.ledger.ClosePeriod;
import eaveside.ledger.EntryLine;
import eaveside.ledger.PostJournal;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.ledger.TrialBalance;
import eaveside.testing.Bench;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

/** March: two visits billed, one of them from a finding, a third credited; wages and a fee. April: one visit. */
class MarginsIT {
    private static final Period MARCH = Period.of(YearMonth.of(2026, 3));
    private static final Period APRIL = Period.of(YearMonth.of(2026, 4));

    @RegisterExtension
    static final Bench bench = new Bench();

    private static WorkedCompany company;

    @BeforeAll
    static void two_months() {
        company = new WorkedCompany(bench);
        Visit first = company.scheduled(null);
        FindingId finding = company.signedOff(first, 2, 4);
        bill(first, ScopeDecision.NO_CHARGE); // 345.00 arrays, 100.00 skylights, 48.00 at no charge
        Visit second = company.scheduled(finding);
        company.signedOff(second, 0, 4);
        bill(second, ScopeDecision.BILL); // 360.00 arrays; 72.00 quoted and 48.00 extra skylights
        Visit third = company.scheduled(null);
        company.signedOff(third, 0, 0);
        IssuedInvoice wrong = bill(third, ScopeDecision.BILL);
        bench.get(CreditInvoice.class)
                .credit(new Reversal(
                        DocumentId.next(),
                        new DocumentId(wrong.id().value()),
                        company.today(),
                        "Wrong customer",
                        company.office));
        journal("6000", "250.00"); // wages; 3 × 70.83 of labor were applied to visits
        bench.clock().to(LocalDate.of(2026, 4, 7));
        Visit fourth = company.scheduled(null);
        company.signedOff(fourth, 8, 0);
        bill(fourth, ScopeDecision.BILL); // 300.00 arrays, 100.00 skylights
    }

    private static IssuedInvoice bill(Visit visit, ScopeDecision forExtras) {
        company.decide(visit.id(), forExtras);
        return company.issued(company.drafted(visit.id()));
    }

    private static void journal(String account, String amount) {
        bench.get(PostJournal.class)
                .post(new PostJournal.Journal(
                        DocumentId.next(),
                        PostJournal.Type.EXPENSE,
                        company.today(),
                        "Wages",
                        List.of(
                                PostJournal.Line.debit(new AccountCode(account), usd(amount)),
                                PostJournal.Line.credit(new AccountCode("1000"), usd(amount))),
                        company.office));
    }

    private static MarginReport margin(Period period) {
        return bench.get(ReadMargins.class).margin(period);
    }

    private static List<Figure> figures(MarginReport report) {
        List<Figure> figures = new ArrayList<>(List.of(report.result()));
        report.unassigned().forEach(u -> {
            figures.add(u.cost());
            if (u.variance() != null) {
                figures.addAll(List.of(u.variance().actual(), u.variance().applied()));
            }
        });
        List<MarginRow> rows = new ArrayList<>(List.of(report.total(), report.uncharged()));
        report.lines().forEach(l -> rows.add(l.row()));
        for (MarginRow row : rows) {
            figures.addAll(List.of(
                    row.revenue(),
                    row.labor(),
                    row.consumables(),
                    row.travel(),
                    row.overhead(),
                    row.margin(),
                    row.noCharge(),
                    row.fromFindings()));
        }
        return figures;
    }

    @Test
    void every_figure_is_the_sum_of_the_entries_that_it_opens() {
        for (Period period : List.of(MARCH, APRIL, new Period(MARCH.from(), APRIL.to()))) {
            List<Figure> figures = figures(margin(period));
            assertTrue(figures.size() >= 27, "figures of a total, two lines and more");
            for (Figure figure : figures) {
                assertEquals(figure.ledgerSum(), bench.get(ReadLedger.class).total(figure.opens()), figure.toString());
                Money entries = Money.sum(
                        CurrencyUnit.USD,
                        bench.get(ReadLedger.class).entries(figure.opens(), null, 1000).rows().stream()
                                .map(EntryLine::amount)
                                .toList());
                assertEquals(figure.ledgerSum(), entries, figure.toString());
            }
        }
        bench.verifyBooks();
    }

    @Test
    void the_result_is_the_ledgers_profit_and_the_parts_add_up_to_it() {
        for (Period period : List.of(MARCH, APRIL)) {
            MarginReport report = margin(period);
            Money loss = Money.sum(
                    CurrencyUnit.USD,
                    bench.get(ReadLedger.class).trialBalance(period.from(), period.to()).accounts().stream()
                            .filter(b -> b.type() == AccountType.REVENUE || b.type() == AccountType.EXPENSE)
                            .map(TrialBalance.Row::change)
                            .toList());
            assertEquals(loss.negated(), report.result().amount());
            Money unassigned = Money.sum(
                    CurrencyUnit.USD,
                    report.unassigned().stream().map(u -> u.cost().amount()).toList());
            assertEquals(
                    report.result().amount(), report.total().margin().amount().minus(unassigned));
            assertEquals(unassigned.negated(), report.uncharged().margin().amount());
            assertEquals(
                    report.total().margin().amount(),
                    Money.sum(
                            CurrencyUnit.USD,
                            report.lines().stream()
                                    .map(l -> l.row().margin().amount())
                                    .toList()));
        }
    }

    @Test
    void march_says_what_was_earned_given_and_found() {
        MarginReport march = margin(MARCH);
        MarginRow arrays = march.rowOf(company.arrays).orElseThrow();
        MarginRow skylights = march.rowOf(company.skylights).orElseThrow();
        assertEquals(usd("705.00"), arrays.revenue().amount());
        assertEquals(usd("220.00"), skylights.revenue().amount());
        assertEquals(usd("84.00"), arrays.consumables().amount());
        assertEquals(usd("0"), skylights.consumables().amount());
        MarginRow total = march.total();
        assertEquals(usd("141.66"), total.labor().amount());
        assertEquals(usd("58.54"), total.travel().amount());
        assertEquals(usd("175.00"), total.overhead().amount());
        assertEquals(usd("465.80"), total.margin().amount());
        assertEquals(usd("48.00"), total.noCharge().amount());
        assertEquals(usd("48.00"), skylights.noCharge().amount());
        assertEquals(usd("432.00"), total.fromFindings().amount());
        assertEquals(usd("360.00"), arrays.fromFindings().amount());
    }

    @Test
    void a_variance_shows_before_the_close_and_stays_the_same_after_it() {
        MarginReport before = margin(MARCH);
        MarginReport.Unassigned labor = before.unassigned().stream()
                .filter(u -> u.name().equals("Labor variance"))
                .findFirst()
                .orElseThrow();
        MarginReport.Variance variance = Objects.requireNonNull(labor.variance());
        assertEquals(usd("250.00"), variance.actual().amount());
        assertEquals(usd("212.49"), variance.applied().amount());
        assertEquals(usd("37.51"), labor.cost().amount()); // 250.00 − 3 × 70.83
        for (int month = 1; month <= 3; month++) {
            bench.get(ClosePeriod.class)
                    .close(new ClosePeriod.Close(DocumentId.next(), YearMonth.of(2026, month), company.office));
        }
        assertEquals(before, margin(MARCH));
        bench.verifyBooks();
    }

    @Test
    void a_period_is_compared_with_the_one_before() {
        MarginComparison comparison = bench.get(ReadMargins.class).compare(APRIL);
        assertEquals(MARCH, comparison.previous().period());
        MarginComparison.Line arrays = comparison.lines().getFirst();
        assertEquals("ARRAYS", arrays.code());
        assertEquals(usd("-405.00"), arrays.revenueChange());
        MarginComparison empty = bench.get(ReadMargins.class).compare(Period.of(YearMonth.of(2026, 3)));
        assertEquals(Optional.empty(), empty.lines().getFirst().previous());
        assertEquals(usd("705.00"), empty.lines().getFirst().revenueChange());
    }
}
