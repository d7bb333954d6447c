package eaveside.reports.internal;

import eaveside.reports.MarginPaper;
import java.math.BigDecimal;
import org.joda.money.CurrencyUnit;

/** Lays out the margin report. Its figures stay numbers down to the cell. */
public final class MarginLayout {
    private MarginLayout() {}

    public static Layout of(MarginPaper paper) {
        Words words = new Words(paper.from().locale());
        Rows rows = new Rows();
        paper.lines().forEach(line -> add(rows, "LINE", line));
        add(rows, "TOTAL", paper.total());
        if (paper.unassigned() != null) {
            add(rows, "UNASSIGNED", paper.unassigned());
        }
        rows.add("TOTAL")
                .put("name", words.text("margin.result"))
                .put("margin", paper.result().amount());
        CurrencyUnit currency = paper.total().revenue().currency();
        String period =
                words.text("margin.period", words.date(paper.first()), words.date(paper.last()), currency.getCode());
        Head head = new Head(paper.from(), words, words.text("margin"), "")
                .put("period", period)
                .put("note", paper.note())
                .put("amountPattern", words.amountPattern(currency))
                .put("percentPattern", "#,##0.0");
        return new Layout("margin", paper.from(), words, head, rows);
    }

    private static void add(Rows rows, String type, MarginPaper.Line line) {
        Rows.Row row = rows.add(type)
                .put("name", line.name())
                .put("revenue", line.revenue().amount())
                .put("labor", line.labor().amount())
                .put("consumables", line.consumables().amount())
                .put("travel", line.travel().amount())
                .put("overhead", line.overhead().amount())
                .put("margin", line.margin().amount())
                .put("noCharge", line.noCharge().amount())
                .put("fromFindings", line.fromFindings().amount());
        BigDecimal percent = line.marginPercent();
        if (percent != null) {
            row.put("percent", percent);
        }
    }
}
