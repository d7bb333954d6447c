package eaveside.web.settings;

import eaveside.customers.SurfaceKind;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Unit;
import eaveside.offerings.Catalogue;
import eaveside.offerings.Offering;
import eaveside.offerings.ServiceLine;
import eaveside.offerings.StandardConsumable;
import eaveside.offerings.TaxSetting;
import eaveside.offerings.TaxSettings;
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

/** Fills the form of an offering with what there is to choose from. */
@Dependent
public class OfferingForm {
    private static final List<Unit> US = List.of(Unit.PIECE, Unit.SQUARE_FOOT, Unit.FOOT, Unit.HOUR, Unit.MILE);
    private static final List<Unit> METRIC =
            List.of(Unit.PIECE, Unit.SQUARE_METRE, Unit.METRE, Unit.HOUR, Unit.KILOMETRE);
    private static final List<String> LABELLED = List.of(
            "code", "name", "serviceLine", "unit", "minutesPerUnit", "taxCode", "surfaceKind", "cautions", "active");

    private final Catalogue catalogue;
    private final TaxSettings taxSettings;
    private final ReadStock readStock;
    private final Viewer viewer;

    @Inject
    public OfferingForm(Catalogue catalogue, TaxSettings taxSettings, ReadStock readStock, Viewer viewer) {
        this.catalogue = catalogue;
        this.taxSettings = taxSettings;
        this.readStock = readStock;
        this.viewer = viewer;
    }

    /** The form; each map goes from what is sent to what is shown. */
    public record OfferingFormPage(
            Fields fields,
            boolean isNew,
            Map<String, String> lines,
            Map<String, String> units,
            Map<String, String> taxCodes,
            Map<String, String> surfaceKinds,
            Map<String, String> items,
            List<Integer> rows)
            implements Page {
        @Override
        public String template() {
            return "settings/offering-form.jte";
        }

        public Map<String, String> labels(View view) {
            Map<String, String> labels = new LinkedHashMap<>();
            LABELLED.forEach(name -> labels.put(name, view.t("settings.offering." + name)));
            for (int row : rows) {
                labels.put("use-" + row + "-item", view.t("settings.offering.consumable", row + 1));
                labels.put("use-" + row + "-quantity", view.t("settings.offering.consumable.per", row + 1));
            }
            return labels;
        }

        /** What the chosen values are called, for comparing two versions. */
        public Map<String, String> texts() {
            Map<String, String> texts = new LinkedHashMap<>(lines);
            texts.putAll(units);
            texts.putAll(surfaceKinds);
            texts.putAll(items);
            return texts;
        }
    }

    OfferingFormPage page(Fields fields, boolean isNew) {
        View view = viewer.view();
        Map<String, String> lines = new LinkedHashMap<>();
        catalogue.lines().stream()
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
        Map<String, String> kinds = new LinkedHashMap<>();
        for (SurfaceKind kind : SurfaceKind.values()) {
            kinds.put(kind.name(), view.t("customers.surface-kind", kind));
        }
        Map<String, String> items = new LinkedHashMap<>();
        for (StockItem item : readStock.items()) {
            items.put(item.id().toString(), view.t("settings.item-in", item.name(), unitName(view, item.baseUnit())));
        }
        List<Integer> rows = new ArrayList<>(fields.rows("use"));
        if (rows.isEmpty() || !fields.hasErrors()) {
            rows.add(rows.isEmpty() ? 0 : rows.getLast() + 1);
        }
        return new OfferingFormPage(fields, isNew, lines, units, taxCodes, kinds, items, rows);
    }

    private static String name(ServiceLine line) {
        return line.code() + " · " + line.name();
    }

    private static String unitName(View view, Unit unit) {
        return unit == Unit.PIECE || unit == Unit.ONE ? view.t("settings.unit", unit) : view.unit(unit);
    }

    static Map<String, String> values(Offering offering) {
        Map<String, String> values = new LinkedHashMap<>();
        values.put("code", offering.code());
        values.put("name", offering.name());
        values.put("serviceLine", offering.serviceLine().toString());
        values.put("unit", offering.unit().name());
        values.put("minutesPerUnit", offering.minutesPerUnit().value().toPlainString());
        values.put("taxCode", offering.taxCode().value());
        SurfaceKind kind = offering.surfaceKind();
        values.put("surfaceKind", kind == null ? "" : kind.name());
        values.put("cautions", offering.cautions());
        values.put("active", offering.active() ? "yes" : "");
        int row = 0;
        for (StandardConsumable use : offering.consumables()) {
            values.put("use-" + row + "-item", use.item().toString());
            values.put("use-" + row + "-quantity", use.perUnit().value().toPlainString());
            row++;
        }
        return values;
    }
}
