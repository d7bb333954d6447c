package eaveside.web.margins;

import eaveside.kernel.Money;
import eaveside.ledger.Books;
import eaveside.ledger.CostKind;
import eaveside.margins.MarginReport;
import eaveside.margins.MarginRow;
import eaveside.reports.MarginPaper;
import eaveside.web.Texts;
import eaveside.web.papers.Letterheads;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.Locale;

/** Puts the margin report on paper: the same figures, no sums of its own but the last row. */
@Dependent
public class MarginPapers {
    private final Books books;
    private final Letterheads letterheads;

    @Inject
    public MarginPapers(Books books, Letterheads letterheads) {
        this.books = books;
        this.letterheads = letterheads;
    }

    MarginPaper paper(MarginReport report) {
        MarginPaper.Line unassigned = unassigned(report);
        MarginPaper.Line lines = line(Texts.of(Locale.ENGLISH, "common.total"), report.total());
        return new MarginPaper(
                letterheads.current(),
                report.period().from(),
                report.period().to(),
                report.lines().stream().map(l -> line(l.name(), l.row())).toList(),
                report.unassigned().isEmpty() ? null : unassigned,
                plus(lines, unassigned),
                Texts.of(Locale.ENGLISH, "margins.paper-note"));
    }

    private static MarginPaper.Line line(String name, MarginRow row) {
        return new MarginPaper.Line(
                name,
                row.revenue().amount(),
                row.labour().amount(),
                row.consumables().amount(),
                row.travel().amount(),
                row.overhead().amount(),
                row.margin().amount(),
                row.goodwill().amount(),
                row.fromFindings().amount());
    }

    private MarginPaper.Line unassigned(MarginReport report) {
        Money revenue = report.unassigned((CostKind) null).negated();
        Money labour = report.unassigned(CostKind.LABOUR);
        Money consumables = report.unassigned(CostKind.CONSUMABLES);
        Money travel = report.unassigned(CostKind.TRAVEL);
        Money overhead = report.unassigned(CostKind.OVERHEAD);
        return new MarginPaper.Line(
                Texts.of(Locale.ENGLISH, "margins.unassigned"),
                revenue,
                labour,
                consumables,
                travel,
                overhead,
                revenue.minus(labour).minus(consumables).minus(travel).minus(overhead),
                books.zero(),
                books.zero());
    }

    private static MarginPaper.Line plus(MarginPaper.Line a, MarginPaper.Line b) {
        return new MarginPaper.Line(
                a.name(),
                a.revenue().plus(b.revenue()),
                a.labour().plus(b.labour()),
                a.consumables().plus(b.consumables()),
                a.travel().plus(b.travel()),
                a.overhead().plus(b.overhead()),
                a.margin().plus(b.margin()),
                a.goodwill().plus(b.goodwill()),
                a.fromFindings().plus(b.fromFindings()));
    }
}
