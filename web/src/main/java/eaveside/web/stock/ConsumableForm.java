package eaveside.web.stock;

import eaveside.inventory.Location;
import eaveside.inventory.Pack;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.inventory.StockType;
import eaveside.kernel.LocationId;
import eaveside.kernel.Quantity;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Unit;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.security.Viewer;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** The form of a consumable: what there is to choose from, and what was typed as packs and minimums. */
@Dependent
public class ConsumableForm {
    private static final List<Unit> US =
            List.of(Unit.PIECE, Unit.US_FLUID_OUNCE, Unit.US_GALLON, Unit.GRAIN, Unit.FOOT, Unit.POUND);
    private static final List<Unit> METRIC =
            List.of(Unit.PIECE, Unit.MILLILITER, Unit.LITER, Unit.GRAIN, Unit.METER, Unit.GRAM, Unit.KILOGRAM);
    private static final List<String> LABELED = List.of("code", "name", "type", "baseUnit", "alkaline", "active");

    private final ReadStock readStock;
    private final Viewer viewer;

    @Inject
    public ConsumableForm(ReadStock readStock, Viewer viewer) {
        this.readStock = readStock;
        this.viewer = viewer;
    }

    /**
     * The form.
     *
     * @param  types  from what is sent to what is shown, as are the units
     * @param  locations that goods can come into, and those with a minimum
     * @param  rows   the numbers of the packs' rows
     */
    public record ConsumablePage(
            Fields fields,
            boolean isNew,
            Map<String, String> types,
            Map<String, String> units,
            List<Location> locations,
            List<Integer> rows)
            implements Page {
        @Override
        public String template() {
            return "stock/consumable-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            LABELED.forEach(name -> labels.put(name, view.t("stock.consumable." + name)));
            for (int row : rows) {
                labels.put("pack-" + row + "-name", view.t("stock.pack.nth", row + 1));
                labels.put("pack-" + row + "-content", view.t("stock.pack.content.nth", row + 1));
                labels.put("pack-" + row + "-unit", view.t("stock.pack.unit.nth", row + 1));
            }
            for (Location location : locations) {
                labels.put(reorderPoint(location.id()), view.t("stock.reorderPoint.in", location.name()));
            }
            return labels;
        }

        /** What the chosen values are called, for comparing two versions. */
        public Map<String, String> texts(View view) {
            Map<String, String> texts = new LinkedHashMap<>(types);
            texts.putAll(units);
            texts.put("yes", view.t("common.yes"));
            return texts;
        }

        /** The name of the field that holds a location's minimum. */
        public String reorderPoint(LocationId location) {
            return ConsumableForm.reorderPoint(location);
        }

        /** The name of the field that keeps what the minimum was when the form was first shown. */
        public String was(LocationId location) {
            return ConsumableForm.was(location);
        }

        /** The short name of the unit that the item is counted in; empty as long as none is chosen. */
        public String unit(View view) {
            return chosen(fields) == null ? "" : view.unit(Unit.valueOf(fields.typed("baseUnit")));
        }
    }

    ConsumablePage page(Fields fields) {
        View view = viewer.view();
        Map<String, String> types = new LinkedHashMap<>();
        for (StockType type : StockType.values()) {
            types.put(type.name(), view.t("stock.type", type));
        }
        Map<String, String> units = new LinkedHashMap<>();
        (view.us() ? US : METRIC).forEach(unit -> units.put(unit.name(), view.t("settings.unit", unit)));
        Unit chosen = chosen(fields);
        if (chosen != null) {
            units.put(chosen.name(), view.t("settings.unit", chosen));
        }
        List<Location> locations = readStock.locations().stream()
                .filter(location -> location.active()
                        || !fields.typed(reorderPoint(location.id())).isEmpty())
                .toList();
        List<Integer> rows = new ArrayList<>(fields.rows("pack"));
        if (rows.isEmpty() || !fields.hasErrors()) {
            rows.add(rows.isEmpty() ? 0 : rows.getLast() + 1);
        }
        return new ConsumablePage(fields, Versions.isNew(fields), types, units, locations, rows);
    }

    private static @Nullable Unit chosen(Fields fields) {
        for (Unit unit : Unit.values()) {
            if (unit.name().equals(fields.typed("baseUnit"))) {
                return unit;
            }
        }
        return null;
    }

    private static String reorderPoint(LocationId location) {
        return "reorderPoint-" + location;
    }

    private static String was(LocationId location) {
        return "was-" + location;
    }

    /** What is stored, under the names of the fields. */
    Map<String, String> values(StockItem item) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("code", item.code());
        values.put("name", item.name());
        values.put("type", item.type().name());
        values.put("baseUnit", item.baseUnit().name());
        values.put("alkaline", item.alkaline() ? "yes" : "");
        values.put("active", item.active() ? "yes" : "");
        int row = 0;
        for (Pack pack : item.packs()) {
            values.put("pack-" + row + "-name", pack.name());
            values.put(
                    "pack-" + row + "-content",
                    pack.content().in(item.baseUnit()).value().toPlainString());
            values.put("pack-" + row + "-unit", item.baseUnit().name());
            row++;
        }
        reorderPoints(item.id()).forEach((location, least) -> {
            values.put(reorderPoint(location), least);
            values.put(was(location), least);
        });
        return values;
    }

    private Map<LocationId, String> reorderPoints(StockItemId item) {
        Map<LocationId, String> texts = new LinkedHashMap<>();
        readStock
                .reorderPoints(item)
                .forEach((location, least) -> texts.put(location, least.value().toPlainString()));
        return texts;
    }

    /** The unit that was chosen, if the type can be counted in it; pieces, and an error, where it cannot. */
    Unit unit(Fields fields, @Nullable StockType type) {
        Unit unit = fields.choice("baseUnit", Unit.class);
        if (unit != null && type != null && !type.takes(unit)) {
            fields.wrong("baseUnit", "stock.unit.unfit." + type.name());
        }
        return unit == null ? Unit.PIECE : unit;
    }

    /** The packs of the rows that were filled in; a content without a unit of its own is in the base unit. */
    List<Pack> packs(Fields fields, Unit baseUnit) {
        List<Pack> packs = new ArrayList<>();
        for (int row : fields.rows("pack")) {
            String p = "pack-" + row + "-";
            if (fields.optional(p + "name").isEmpty()
                    && fields.optional(p + "content").isEmpty()) {
                continue;
            }
            String name = fields.text(p + "name");
            Unit unit = fields.optional(p + "unit").isEmpty() ? baseUnit : fields.choice(p + "unit", Unit.class);
            Quantity content = fields.quantity(p + "content", unit == null ? baseUnit : unit);
            if (fields.error("baseUnit") == null && !content.unit().isLike(baseUnit)) {
                fields.wrong(p + "unit", "stock.pack.unlike");
            }
            if (!name.isEmpty()) {
                Pack pack = fields.made(p + "content", () -> new Pack(name, content));
                if (pack != null) {
                    packs.add(pack);
                }
            }
        }
        return packs;
    }

    /**
     * The minimums that were typed over, zero where one was emptied. What was left as it was shown is not set again, so
     * that it does not undo what somebody else has set meanwhile.
     */
    Map<LocationId, Quantity> reorderPoints(Fields fields, Unit baseUnit) {
        Map<LocationId, Quantity> reorderPoints = new LinkedHashMap<>();
        for (Location location : readStock.locations()) {
            String name = reorderPoint(location.id());
            String typed = fields.optional(name);
            if (!typed.equals(fields.optional(was(location.id())))) {
                Quantity least = typed.isEmpty() ? Quantity.zero(baseUnit) : fields.quantity(name, baseUnit);
                if (least.isNegative()) {
                    fields.wrong(name, "stock.reorderPoint.negative");
                }
                reorderPoints.put(location.id(), least);
            }
        }
        return reorderPoints;
    }
}
