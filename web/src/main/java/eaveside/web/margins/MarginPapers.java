package eaveside.web.margins;

import eaveside.margins.MarginReport;
import eaveside.margins.MarginRow;
import eaveside.reports.MarginPaper;
import eaveside.web.Texts;
import eaveside.web.papers.Letterheads;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.Locale;

/** Puts the margin report on paper: the same figures as on the page, no sums of its own. */
@Dependent
public class MarginPapers {
    @Inject
    Letterheads letterheads;

    MarginPaper paper(MarginReport report) {
        return new MarginPaper(
                letterheads.current(),
                report.period().from(),
                report.period().to(),
                report.lines().stream().map(l -> line(l.name(), l.row())).toList(),
                line(Texts.of(Locale.ENGLISH, "margins.all-lines"), report.total()),
                report.unassigned().isEmpty()
                        ? null
                        : line(Texts.of(Locale.ENGLISH, "margins.unassigned"), report.uncharged()),
                report.result().amount(),
                Texts.of(Locale.ENGLISH, "margins.paper-note"));
    }

    static MarginPaper.Line line(String name, MarginRow row) {
        return new MarginPaper.Line(
                name,
                row.revenue().amount(),
                row.labor().amount(),
                row.consumables().amount(),
                row.travel().amount(),
                row.overhead().amount(),
                row.margin().amount(),
                row.noCharge().amount(),
                row.fromFindings().amount());
    }
}
