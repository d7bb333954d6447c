package eaveside.reports.internal;

import eaveside.kernel.Money;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Lines of an invoice or quote, gathered under their service lines, with a subtotal where one has several. */
final class LineRows {
    private LineRows() {}

    /** A line as printed. */
    record Line(String serviceLine, String text, String detail, String quantity, String price, String tax, Money net) {}

    static void add(Rows rows, List<Line> lines, Words words) {
        Map<String, List<Line>> gathered = new LinkedHashMap<>();
        lines.forEach(line -> gathered.computeIfAbsent(line.serviceLine(), x -> new ArrayList<>())
                .add(line));
        rows.section("LINES");
        gathered.forEach((serviceLine, group) -> {
            rows.block();
            if (!serviceLine.isBlank()) {
                rows.add("HEADING").put("text", serviceLine);
            }
            boolean first = true;
            for (Line line : group) {
                if (!first) {
                    rows.block();
                }
                first = false;
                rows.add("LINE")
                        .put("text", line.text())
                        .put("detail", line.detail())
                        .put("quantity", line.quantity())
                        .put("price", line.price())
                        .put("tax", line.tax())
                        .put("amount", words.amount(line.net()));
            }
            if (gathered.size() > 1 && group.size() > 1) {
                Money sum = Money.sum(
                        group.getFirst().net().currency(),
                        group.stream().map(Line::net).toList());
                rows.add("SUBTOTAL")
                        .put("text", words.text("subtotal", serviceLine))
                        .put("amount", words.amount(sum));
            }
        });
        rows.section("CLOSING");
    }
}
