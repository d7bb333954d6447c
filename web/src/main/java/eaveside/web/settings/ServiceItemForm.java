package eaveside.web.settings;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.catalog.StandardConsumable;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.customers.SurfaceType;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
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

/** Fills the form of a service with what there is to choose from. */
@Dependent
public class ServiceItemForm {
    private static final List<Unit> US = List.of(Unit.PIECE, Unit.SQUARE_FOOT, Unit.FOOT, Unit.HOUR, Unit.MILE);
    private static final List<Unit> METRIC =
            List.of(Unit.PIECE, Unit.SQUARE_METER, Unit.METER, Unit.HOUR, Unit.KILOMETER);
    private static final List<String> LABELED = List.of(
            "code", "name", "serviceLine", "unit", "minutesPerUnit", "taxCode", "surfaceType", "cautions", "active");

    private final Catalog catalog;
    private final TaxSettings taxSettings;
    private final ReadStock readStock;
    private final Viewer viewer;

    @Inject
    public ServiceItemForm(Catalog catalog, TaxSettings taxSettings, ReadStock readStock, Viewer viewer) {
        this.catalog = catalog;
        this.taxSettings = taxSettings;
        this.readStock = readStock;
        this.viewer = viewer;
    }

    /** The form; each map goes from what is sent to what is shown. */
    public record ServiceItemFormPage(
            Fields fields,
            boolean isNew,
            Map<String, String> lines,
            Map<String, String> units,
            Map<String, String> taxCodes,
            Map<String, String> surfaceTypes,
            Map<String, String> items,
            List<Integer> rows)
            implements Page {
        @Override
        public String template() {
            return "settings/service-item-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            LABELED.forEach(name -> labels.put(name, view.t("settings.serviceItem." + name)));
            for (int row : rows) {
                labels.put("use-" + row + "-item", view.t("settings.serviceItem.consumable", row + 1));
                labels.put("use-" + row + "-quantity", view.t("settings.serviceItem.consumable.per", row + 1));
            }
            return labels;
        }

        /** What the chosen values are called, for comparing two versions. */
        public Map<String, String> texts() {
            Map<String, String> texts = new LinkedHashMap<>(lines);
            texts.putAll(units);
            texts.putAll(surfaceTypes);
            texts.putAll(items);
            return texts;
        }
    }

    ServiceItemFormPage page(Fields fields, boolean isNew) {
        View view = viewer.view();
        Map<String, String> lines = new LinkedHashMap<>();
        catalog.lines().stream()
                .filter(line -> line.active() || line.id().toString().equals(fields.typed("serviceLine")))
                .forEach(line -> lines.put(line.id().toString(), name(line)));
        Map<String, String> units = new LinkedHashMap<>();
        (view.us() ? US : METRIC).forEach(unit -> units.put(unit.name(), view.t("settings.unit", unit)));
        for (Unit unit : Unit.values()) {
            if (unit.name().equals(fields.typed("unit"))) {
                units.put(unit.name(), view.t("settings.unit", unit));
            }
        }
        Map<String, String> taxCodes = new LinkedHashMap<>();
        for (TaxSetting setting : taxSettings.all()) {
            taxCodes.putIfAbsent(setting.code().value(), setting.code() + " · " + view.percent(setting.rate()));
        }
        Map<String, String> types = new LinkedHashMap<>();
        for (SurfaceType type : SurfaceType.values()) {
            types.put(type.name(), view.t("customers.surface-type", type));
        }
        Map<String, String> items = new LinkedHashMap<>();
        for (StockItem item : readStock.items()) {
            items.put(item.id().toString(), view.t("settings.item-in", item.name(), unitName(view, item.baseUnit())));
        }
        List<Integer> rows = new ArrayList<>(fields.rows("use"));
        if (rows.isEmpty() || !fields.hasErrors()) {
            rows.add(rows.isEmpty() ? 0 : rows.getLast() + 1);
        }
        return new ServiceItemFormPage(fields, isNew, lines, units, taxCodes, types, items, rows);
    }

    private static String name(ServiceLine line) {
        return line.code() + " · " + line.name();
    }

    private static String unitName(View view, Unit unit) {
        return unit == Unit.PIECE || unit == Unit.ONE ? view.t("settings.unit", unit) : view.unit(unit);
    }

    static Map<String, String> values(ServiceItem serviceItem) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("code", serviceItem.code());
        values.put("name", serviceItem.name());
        values.put("serviceLine", serviceItem.serviceLine().toString());
        values.put("unit", serviceItem.unit().name());
        values.put("minutesPerUnit", serviceItem.minutesPerUnit().value().toPlainString());
        values.put("taxCode", serviceItem.taxCode().value());
        SurfaceType type = serviceItem.surfaceType();
        values.put("surfaceType", type == null ? "" : type.name());
        values.put("cautions", serviceItem.cautions());
        values.put("active", serviceItem.active() ? "yes" : "");
        int row = 0;
        for (StandardConsumable use : serviceItem.consumables()) {
            values.put("use-" + row + "-item", use.item().toString());
            values.put("use-" + row + "-quantity", use.perUnit().value().toPlainString());
            row++;
        }
        return values;
    }
}
