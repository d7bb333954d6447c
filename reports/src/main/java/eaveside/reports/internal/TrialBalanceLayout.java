package eaveside.reports.internal;

import eaveside.kernel.Money;
import eaveside.reports.TrialBalancePaper;
import eaveside.reports.TrialBalancePaper.Sides;
import org.joda.money.CurrencyUnit;

/** Lays out the trial balance: a debit and a credit column for the opening, the change and the closing. */
public final class TrialBalanceLayout {
    private TrialBalanceLayout() {}

    public static Layout of(TrialBalancePaper paper) {
        Words words = new Words(paper.from().locale());
        Rows rows = new Rows();
        for (TrialBalancePaper.Line line : paper.lines()) {
            Rows.Row row = rows.add("LINE")
                    .put("name", line.code() + " " + line.name())
                    .put("type", line.type());
            put(row, "opening", line.opening());
            put(row, "change", line.change());
            put(row, "closing", line.closing());
        }
        Rows.Row total =
                rows.add("TOTAL").put("name", words.text("trial-balance.total")).put("type", "");
        put(total, "opening", paper.opening());
        put(total, "change", paper.change());
        put(total, "closing", paper.closing());
        CurrencyUnit currency = paper.closing().debit().currency();
        Head head = new Head(paper.from(), words, words.text("trial-balance"), "")
                .put(
                        "period",
                        words.text(
                                "trial-balance.period",
                                words.date(paper.first()),
                                words.date(paper.last()),
                                currency.getCode()))
                .put("note", paper.note())
                .put("amountPattern", words.amountPattern(currency));
        return new Layout("trial-balance", paper.from(), words, head, rows);
    }

    /** An amount on the side where it belongs; nothing on either where there is none. */
    private static void put(Rows.Row row, String column, Money amount) {
        if (amount.isPositive()) {
            row.put(column + "Debit", amount.amount());
        } else if (amount.isNegative()) {
            row.put(column + "Credit", amount.negated().amount());
        }
    }

    private static void put(Rows.Row row, String column, Sides sides) {
        row.put(column + "Debit", sides.debit().amount())
                .put(column + "Credit", sides.credit().amount());
    }
}
