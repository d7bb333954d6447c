package eaveside.web.overview;

import eaveside.kernel.Money;
import eaveside.margins.LineTrend;
import eaveside.margins.MarginComparison;
import eaveside.margins.MarginRow;
import eaveside.visits.ReadVisits.LaborMinutes;
import eaveside.web.View;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;

/** What the overview says in sentences. */
public final class Words {
    private static final BigDecimal HUNDRED = BigDecimal.valueOf(100);
    private static final BigDecimal MINUTES = BigDecimal.valueOf(60);

    private Words() {}

    /** Such as "up 4.2%" or "down 10.6%"; in money where there was nothing before. */
    public static String change(View view, Money now, Money before) {
        Money change = now.minus(before);
        if (change.isZero()) {
            return view.t("overview.same");
        }
        BigDecimal percent = Compared.change(now, before);
        String by = percent == null ? view.money(size(change)) : view.number(percent.abs()) + "%";
        return view.t(change.isNegative() ? "overview.down" : "overview.up", by);
    }

    /** An amount without its sign. */
    public static Money size(Money amount) {
        return amount.isNegative() ? amount.negated() : amount;
    }

    /** Whole units of the currency: the column is narrow, and the exact amount opens. */
    public static String whole(View view, Money amount) {
        return view.number(amount.amount().setScale(0, RoundingMode.HALF_UP));
    }

    /** Why a line earned more or less, in amounts that add up to the change: revenue first, then each type of cost. */
    public static String why(View view, MarginComparison.Line line) {
        Money none = Money.zero(line.marginChange().currency());
        List<String> parts = new ArrayList<>();
        part(view, parts, "revenue", line.revenueChange());
        part(view, parts, "labor", cost(line, none, row -> row.labor().amount()));
        part(
                view,
                parts,
                "consumables",
                cost(line, none, row -> row.consumables().amount()));
        part(view, parts, "travel", cost(line, none, row -> row.travel().amount()));
        part(view, parts, "overhead", cost(line, none, row -> row.overhead().amount()));
        return parts.isEmpty() ? "" : String.join(", ", parts) + ".";
    }

    /** What a change of cost does to the margin. */
    private static Money cost(MarginComparison.Line line, Money none, Function<MarginRow, Money> of) {
        return line.previous().map(of).orElse(none).minus(line.current().map(of).orElse(none));
    }

    private static void part(View view, List<String> parts, String what, Money effect) {
        if (!effect.isZero()) {
            parts.add(view.t(
                    "overview.why." + what, (effect.isNegative() ? "−\u2060" : "+\u2060") + view.money(size(effect))));
        }
    }

    /** Billed of paid, in percent. */
    public static String share(View view, LaborMinutes labor) {
        return labor.paid() == 0
                ? view.t("overview.hours.none")
                : view.number(BigDecimal.valueOf(labor.billed())
                                .multiply(HUNDRED)
                                .divide(BigDecimal.valueOf(labor.paid()), 0, RoundingMode.HALF_UP))
                        + "%";
    }

    public static String hours(View view, LaborMinutes labor) {
        return view.t("overview.hours.of", hours(view, labor.billed()), hours(view, labor.paid()));
    }

    private static String hours(View view, long minutes) {
        return view.number(BigDecimal.valueOf(minutes).divide(MINUTES, 0, RoundingMode.HALF_UP));
    }

    /** The picture in a sentence for each line. */
    public static String trend(View view, List<LineTrend> trends) {
        return trends.stream()
                .map(trend -> {
                    LineTrend.Month last = trend.months().getLast();
                    return view.t(
                            "overview.trend.text",
                            trend.name(),
                            view.month(last.month()),
                            view.money(last.revenue()),
                            view.money(last.margin()));
                })
                .collect(Collectors.joining(" "));
    }
}
