package eaveside.web.quotes;

import eaveside.catalog.ServiceItem;
import eaveside.customers.Surface;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.pricing.ExpectedTravel;
import eaveside.pricing.PriceList;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteScope;
import eaveside.web.forms.Fields;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.function.Function;
import java.util.function.Supplier;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * The form of a quote: for each surface of the site the services that can be done on it, to tick, with the surface's
 * extent as quantity; and free rows for work on nothing that is recorded.
 */
public final class QuoteForm {
    private static final String LINE = "line";
    private static final String FREE = "free";
    private static final int PRESET_DECIMALS = 2;

    private final List<Surface> surfaces;
    private final Map<String, ServiceItem> serviceItems;
    private final PriceList prices;
    private final Unit distance;

    /** @param  distance what the company measures its ways in */
    QuoteForm(List<Surface> surfaces, List<ServiceItem> serviceItems, PriceList prices, Unit distance) {
        this.surfaces = surfaces;
        this.serviceItems = serviceItems.stream()
                .collect(Collectors.toMap(
                        o -> o.id().toString(), Function.identity(), (one, other) -> one, LinkedHashMap::new));
        this.prices = prices;
        this.distance = distance;
    }

    /**
     * A row to tick.
     *
     * @param  number in the names of its fields
     */
    public record Row(int number, ServiceItem serviceItem) {
        public String prefix() {
            return LINE + "-" + number + "-";
        }
    }

    /** What can be done on one surface. */
    public record Group(Surface surface, List<Row> rows) {}

    /** The fields of a new quote, nothing ticked. */
    Map<String, String> fresh() {
        Map<String, String> values = new LinkedHashMap<>();
        int number = 0;
        for (Surface surface : surfaces) {
            for (ServiceItem serviceItem : surface.active() ? fitting(surface) : List.<ServiceItem>of()) {
                String prefix = LINE + "-" + number++ + "-";
                values.put(prefix + "id", QuoteLineId.next().toString());
                values.put(prefix + "surface", surface.id().toString());
                values.put(prefix + "serviceItem", serviceItem.id().toString());
                values.put(prefix + "quantity", preset(surface.extent(), serviceItem.unit()));
            }
        }
        return values;
    }

    /** The fields of a quote that is changed: its lines are ticked, with what else the site offers around them. */
    Map<String, String> filled(Quote quote) {
        Map<String, String> values = fresh();
        int number = Fields.showing(values).rows(LINE).size();
        int free = 0;
        for (Quote.Line line : quote.lines()) {
            String prefix;
            if (line.surface() == null) {
                prefix = FREE + "-" + free++ + "-";
            } else {
                prefix = untickedRow(values, line);
                if (prefix == null) {
                    prefix = LINE + "-" + number++ + "-";
                    values.put(prefix + "surface", line.surface().toString());
                }
                values.put(prefix + "on", "yes");
            }
            values.put(prefix + "id", line.id().toString());
            values.put(prefix + "serviceItem", line.serviceItem().toString());
            values.put(
                    prefix + "quantity", line.quantity().in(unit(line)).value().toPlainString());
        }
        values.put("validUntil", quote.validUntil().toString());
        values.put("note", quote.note());
        if (quote.travel().drivingMinutes() > 0) {
            values.put("drivingMinutes", String.valueOf(quote.travel().drivingMinutes()));
        }
        if (!quote.travel().distance().isZero()) {
            values.put("distance", preset(quote.travel().distance(), distance));
        }
        return values;
    }

    private Unit unit(Quote.Line line) {
        ServiceItem serviceItem = serviceItems.get(line.serviceItem().toString());
        return serviceItem == null ? line.quantity().unit() : serviceItem.unit();
    }

    private static @Nullable String untickedRow(Map<String, String> values, Quote.Line line) {
        return Fields.showing(values).rows(LINE).stream()
                .map(row -> LINE + "-" + row + "-")
                .filter(prefix -> String.valueOf(line.surface()).equals(values.get(prefix + "surface"))
                        && line.serviceItem().toString().equals(values.get(prefix + "serviceItem"))
                        && !values.containsKey(prefix + "on"))
                .findFirst()
                .orElse(null);
    }

    private List<ServiceItem> fitting(Surface surface) {
        return sold().stream().filter(o -> o.surfaceType() == surface.type()).toList();
    }

    /** Everything that the book has a price for. */
    List<ServiceItem> sold() {
        return serviceItems.values().stream()
                .filter(o -> o.active() && prices.priceOf(o.id()).isPresent())
                .toList();
    }

    private static String preset(Quantity extent, Unit unit) {
        return extent.in(unit)
                .value()
                .setScale(PRESET_DECIMALS, RoundingMode.HALF_UP)
                .stripTrailingZeros()
                .toPlainString();
    }

    /** What a stored line is, in words. */
    public String describe(Quote.Line line) {
        ServiceItem serviceItem = serviceItems.get(line.serviceItem().toString());
        String name = serviceItem == null ? "" : serviceItem.name();
        return surfaces.stream()
                .filter(surface -> surface.id().equals(line.surface()))
                .findFirst()
                .map(surface -> name + ", " + surface.name())
                .orElse(name);
    }

    /** The rows as they stand in the form, by surface. */
    public List<Group> groups(Fields fields) {
        List<Group> groups = new ArrayList<>();
        for (Surface surface : surfaces) {
            List<Row> rows = new ArrayList<>();
            for (int number : fields.rows(LINE)) {
                String prefix = LINE + "-" + number + "-";
                ServiceItem serviceItem = serviceItems.get(fields.typed(prefix + "serviceItem"));
                if (serviceItem != null
                        && fields.typed(prefix + "surface").equals(surface.id().toString())) {
                    rows.add(new Row(number, serviceItem));
                }
            }
            if (!rows.isEmpty()) {
                groups.add(new Group(surface, rows));
            }
        }
        return groups;
    }

    /** The free rows that have something in them, and an empty one to fill. */
    List<Integer> freeRows(Fields fields) {
        List<Integer> rows = new ArrayList<>(fields.rows(FREE));
        rows.removeIf(row -> fields.typed(FREE + "-" + row + "-serviceItem").isBlank()
                && fields.typed(FREE + "-" + row + "-quantity").isBlank());
        rows.add(rows.isEmpty() ? 0 : rows.getLast() + 1);
        return rows;
    }

    /** A line that was asked for, with the prefix of its fields. */
    record Asked(String prefix, QuoteScope.Line line) {}

    /** The lines that are ticked or filled in; what is wrong with them is noted. */
    List<Asked> lines(Fields fields) {
        List<Asked> lines = new ArrayList<>();
        for (int row : fields.rows(LINE)) {
            String prefix = LINE + "-" + row + "-";
            if (fields.ticked(prefix + "on")) {
                add(lines, prefix, fields, SurfaceId.of(fields.typed(prefix + "surface")));
            }
        }
        for (int row : fields.rows(FREE)) {
            String prefix = FREE + "-" + row + "-";
            if (!fields.typed(prefix + "serviceItem").isBlank()) {
                add(lines, prefix, fields, null);
            } else if (!fields.typed(prefix + "quantity").isBlank()) {
                fields.wrong(prefix + "serviceItem", "forms.choose");
            }
        }
        return lines;
    }

    private void add(List<Asked> lines, String prefix, Fields fields, @Nullable SurfaceId surface) {
        ServiceItemId id = ServiceItemId.of(fields.typed(prefix + "serviceItem"));
        ServiceItem serviceItem = serviceItems.get(id.toString());
        if (serviceItem == null) {
            fields.wrong(prefix + "serviceItem", "forms.choose");
            return;
        }
        Quantity quantity = fields.quantity(prefix + "quantity", serviceItem.unit());
        if (fields.error(prefix + "quantity") == null) {
            QuoteScope.Line line = fields.made(
                    prefix + "quantity", () -> new QuoteScope.Line(lineId(fields, prefix), id, surface, quantity));
            if (line != null) {
                lines.add(new Asked(prefix, line));
            }
        }
    }

    /**
     * The id that the row came with. A row that was added in the browser has none: then it follows from the quote, the
     * version that the form started from and the row's number, so that the form sent twice is the same command twice.
     */
    private static QuoteLineId lineId(Fields fields, String prefix) {
        String id = fields.typed(prefix + "id");
        if (!id.isEmpty()) {
            return QuoteLineId.of(id);
        }
        String name = fields.typed("id") + "/" + fields.typed("version") + "/" + prefix;
        return new QuoteLineId(UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)));
    }

    /**
     * The whole scope. It is made when asked for, so that what it refuses as a whole is noted where the form is run.
     */
    Supplier<QuoteScope> scope(Fields fields, LocalDate today) {
        List<QuoteScope.Line> lines = lines(fields).stream().map(Asked::line).toList();
        LocalDate validUntil = fields.date("validUntil", today);
        int minutes = fields.typed("drivingMinutes").isBlank() ? 0 : fields.integer("drivingMinutes", 0, 10_000);
        Quantity way =
                fields.typed("distance").isBlank() ? Quantity.zero(distance) : fields.quantity("distance", distance);
        String note = fields.optional("note");
        return () -> new QuoteScope(validUntil, note, new ExpectedTravel(minutes, way), lines);
    }
}
