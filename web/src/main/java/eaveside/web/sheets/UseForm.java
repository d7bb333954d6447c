package eaveside.web.sheets;

import eaveside.inventory.CountBasis;
import eaveside.inventory.Ppm;
import eaveside.inventory.StockItem;
import eaveside.inventory.WaterReading;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LotId;
import eaveside.kernel.MixId;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.visits.JobSheet;
import eaveside.visits.JobSheet.Used;
import eaveside.web.forms.Fields;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Reads from a sheet's fields what was used up: water, soap, brushes, other goods, and a count that differs. */
final class UseForm {
    private final Fields fields;
    private final Known known;
    private final List<JobSheet.Reading> readings = new ArrayList<>();
    private final List<Used> used = new ArrayList<>();
    private final JobSheet.@Nullable Declared count;

    UseForm(Fields fields, Known known) {
        this.fields = fields;
        this.known = known;
        fields.rows("reading").forEach(row -> readWater("reading-" + row + "-"));
        fields.rows("mix").forEach(row -> readMix("mix-" + row + "-"));
        fields.rows("brush").forEach(row -> readBrush("brush-" + row + "-"));
        fields.rows("item").forEach(row -> readItem("item-" + row + "-"));
        this.count = readCount();
    }

    List<JobSheet.Reading> readings() {
        return readings;
    }

    List<Used> used() {
        return used;
    }

    JobSheet.@Nullable Declared count() {
        return count;
    }

    private void readWater(String prefix) {
        if (isBlank(prefix, "tapWater", "pureWater", "volume")) {
            return;
        }
        BigDecimal tapWater = fields.decimal(prefix + "tapWater");
        BigDecimal pureWater = fields.decimal(prefix + "pureWater");
        Quantity volume = fields.quantity(prefix + "volume", known.volume());
        if (fields.hasErrors()) {
            return;
        }
        String canister = fields.typed(prefix + "canister");
        JobSheet.Reading reading = fields.made(
                prefix + "pureWater",
                () -> new JobSheet.Reading(
                        new WaterReading(new Ppm(tapWater), new Ppm(pureWater), volume),
                        canister.isEmpty() ? null : LotId.of(canister),
                        line(prefix)));
        if (reading != null) {
            readings.add(reading);
        }
    }

    private void readMix(String prefix) {
        read(
                prefix,
                "mix",
                "volume",
                known.volume(),
                volume -> () -> new Used.OfMix(MixId.of(fields.typed(prefix + "mix")), volume, line(prefix)));
    }

    private void readBrush(String prefix) {
        read(
                prefix,
                "lot",
                "units",
                Unit.PIECE,
                units -> () -> new Used.OfBrush(LotId.of(fields.typed(prefix + "lot")), units, line(prefix)));
    }

    private void readItem(String prefix) {
        String id = fields.typed(prefix + "item");
        StockItem item = id.isEmpty() ? null : known.items().get(StockItemId.of(id));
        Unit unit = item == null ? Unit.PIECE : item.baseUnit();
        read(
                prefix,
                "item",
                "quantity",
                unit,
                quantity ->
                        () -> new Used.OfItem(StockItemId.of(fields.typed(prefix + "item")), quantity, line(prefix)));
    }

    private interface Making {
        Supplier<Used> of(Quantity quantity);
    }

    /** A row that names a thing and how much of it; one without the other is an error, neither is no row. */
    private void read(String prefix, String thing, String amount, Unit unit, Making making) {
        if (isBlank(prefix, amount)) {
            requireUnnamed(prefix, thing, amount);
            return;
        }
        if (fields.typed(prefix + thing).isEmpty()) {
            fields.wrong(prefix + thing, "forms.choose");
            return;
        }
        Quantity quantity = fields.quantity(prefix + amount, unit);
        if (fields.error(prefix + amount) == null) {
            Used made = fields.made(prefix + amount, making.of(quantity));
            if (made != null) {
                used.add(made);
            }
        }
    }

    private JobSheet.@Nullable Declared readCount() {
        List<JobSheet.Counted> lines = new ArrayList<>();
        for (int row : fields.rows("count")) {
            JobSheet.Counted counted = readCounted("count-" + row + "-");
            if (counted != null) {
                lines.add(counted);
            }
        }
        if (lines.isEmpty()) {
            if (!fields.typed("count-reason").isBlank()
                    && fields.errors().keySet().stream().noneMatch(field -> field.startsWith("count-"))) {
                fields.wrong(
                        "count-" + fields.rows("count").stream().findFirst().orElse(0) + "-thing", "forms.choose");
            }
            return null;
        }
        String reason = fields.text("count-reason");
        DocumentId document = new DocumentId(fields.id("count-id"));
        return reason.isEmpty()
                ? null
                : fields.made("count-reason", () -> new JobSheet.Declared(document, reason, lines));
    }

    private JobSheet.@Nullable Counted readCounted(String prefix) {
        if (isBlank(prefix, "found")) {
            requireUnnamed(prefix, "thing", "found");
            return null;
        }
        // The item, and after a slash one lot of it.
        String[] thing = fields.typed(prefix + "thing").split("/", 2);
        StockItem item = thing[0].isEmpty() ? null : known.items().get(StockItemId.of(thing[0]));
        if (item == null) {
            fields.wrong(prefix + "thing", "forms.choose");
            return null;
        }
        Quantity found = fields.quantity(prefix + "found", item.baseUnit());
        LotId lot = thing.length == 2 ? LotId.of(thing[1]) : null;
        return fields.made(prefix + "found", () -> new JobSheet.Counted(item.id(), lot, CountBasis.FOUND, found));
    }

    /** What was named is not dropped because its amount is missing. */
    private void requireUnnamed(String prefix, String thing, String amount) {
        if (!isBlank(prefix, thing)) {
            fields.wrong(prefix + amount, "forms.missing");
        }
    }

    private boolean isBlank(String prefix, String... names) {
        return Stream.of(names).allMatch(name -> fields.typed(prefix + name).isBlank());
    }

    private @Nullable ServiceLineId line(String prefix) {
        String line = fields.typed(prefix + "line");
        return line.isEmpty() ? null : ServiceLineId.of(line);
    }
}
