package eaveside.web.sheets;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Surface;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Shared;
import eaveside.kernel.Unit;
import eaveside.visits.SentSheet;
import eaveside.visits.Visit;
import eaveside.web.Notation;
import eaveside.web.View;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.HashMap;
import java.util.Map;
import java.util.function.UnaryOperator;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** What the numbers of a sheet that was sent are numbers of: a page's form says no units, it shows them. */
@Shared
public class SentUnits {
    private static final Pattern NUMBER = Pattern.compile("[-−]?[\\d.,'’\\s]*\\d");

    @Inject
    ReadStock readStock;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    Catalog catalog;

    /** What stands behind the value of the field of such a name; empty where nothing does. */
    UnaryOperator<String> of(Visit visit, SentSheet sheet, View view) {
        MultivaluedMap<String, String> sent = new MultivaluedHashMap<>();
        sheet.fields().forEach(field -> sent.add(field.name(), field.value()));
        Notation measured = Notation.PLAIN.in(TakeSheet.measures(sent.getFirst(TakeSheet.MEASURES)));
        MultivaluedMap<String, String> said = PhoneNames.today(sent);
        Map<String, Unit> units = units(visit);
        return name -> {
            String value = said.getFirst(name);
            if (value == null || !NUMBER.matcher(value).matches()) {
                return "";
            }
            String word = word(name, view);
            Unit unit = word.isEmpty() ? unit(name, said, units) : null;
            return unit == null ? word : view.unit(measured.unitOf(unit));
        };
    }

    private static String word(String name, View view) {
        return name.endsWith("Minutes")
                ? view.t("sheets.minutes")
                : name.endsWith("-tapWater") || name.endsWith("-pureWater") ? view.t("sheets.ppm") : "";
    }

    private static @Nullable Unit unit(String name, MultivaluedMap<String, String> said, Map<String, Unit> units) {
        Matcher row = PhoneNames.ROW.matcher(name);
        if (!row.matches()) {
            return name.equals("distance") ? Unit.MILE : null;
        }
        String prefix = row.group("list") + "-" + row.group("row") + "-";
        return switch (row.group("name")) {
            case "volume" -> Unit.US_GALLON;
            case "done", "extent" -> units.get(said.getFirst(prefix + "id"));
            case "found" ->
                units.get(String.valueOf(said.getFirst(prefix + "item")).split("/", 2)[0]);
            case "quantity" ->
                switch (row.group("list")) {
                    case "line" -> units.get(said.getFirst(prefix + "id"));
                    case "extra" -> units.get(said.getFirst(prefix + "serviceItem"));
                    default -> units.get(said.getFirst(prefix + "item"));
                };
            default -> null;
        };
    }

    /** By the id of what is done, measured, sold or used. */
    private Map<String, Unit> units(Visit visit) {
        Map<String, Unit> units = new HashMap<>();
        visit.lines()
                .forEach(line -> units.put(line.id().toString(), line.planned().unit()));
        for (Surface surface : readSurfaces.ofSite(visit.site())) {
            units.put(surface.id().toString(), surface.extent().unit());
        }
        for (ServiceItem serviceItem : catalog.serviceItems()) {
            units.put(serviceItem.id().toString(), serviceItem.unit());
        }
        for (StockItem item : readStock.items()) {
            units.put(item.id().toString(), item.baseUnit());
        }
        return units;
    }
}
