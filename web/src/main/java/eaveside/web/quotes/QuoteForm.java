package eaveside.web.quotes;

import eaveside.catalog.ServiceItem;
import eaveside.customers.Surface;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteLineId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Unit;
import eaveside.pricing.PriceList;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteScope;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import java.math.RoundingMode;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.UUID;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The rows of a quote's form: for each surface of the site the services that can be done on it, to check, with the
 * surface's extent as quantity; and free rows for work on nothing that is recorded.
 */
public final class QuoteForm {
    private static final String LINE = "line";
    private static final int PRESET_DECIMALS = 2;

    private final Fields fields;
    private final List<Surface> surfaces;
    private final Map<String, ServiceItem> serviceItems = new LinkedHashMap<>();
    private final PriceList prices;
    private final Unit distance;

    /** @param  distance what the company measures its ways in */
    QuoteForm(Fields fields, List<Surface> surfaces, List<ServiceItem> serviceItems, PriceList prices, Unit distance) {
        this.surfaces = surfaces;
        serviceItems.forEach(item -> this.serviceItems.put(item.id().toString(), item));
        this.prices = prices;
        this.distance = distance;
        this.fields = fields.completedBy(ids(fields)).labeled("quotes", "quote");
    }

    /**
     * The ids of rows that were added in the browser. They follow from the quote, the version that the form started from
     * and the row's number, so that the form sent twice is the same command twice.
     */
    private static Map<String, String> ids(Fields fields) {
        Map<String, String> ids = new HashMap<>();
        for (int row : fields.rows(LINE)) {
            String prefix = prefix(row);
            if (fields.typed(prefix + "id").isEmpty() && isFilled(fields, prefix)) {
                String name = fields.typed("id") + "/" + fields.typed("version") + "/" + prefix;
                ids.put(
                        prefix + "id",
                        UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8))
                                .toString());
            }
        }
        return ids;
    }

    private static boolean isFilled(Fields fields, String prefix) {
        return !fields.typed(prefix + "serviceItem").isBlank()
                || !fields.typed(prefix + "quantity").isBlank();
    }

    /** The same form with a row for each service that fits a surface and is not on it yet. */
    QuoteForm completed() {
        Map<String, String> values = new LinkedHashMap<>();
        int number = fields.rows(LINE).size();
        for (Surface surface : surfaces) {
            for (ServiceItem item : missing(surface)) {
                String prefix = prefix(number++);
                values.put(prefix + "id", QuoteLineId.next().toString());
                values.put(prefix + "surface", surface.id().toString());
                values.put(prefix + "serviceItem", item.id().toString());
                values.put(prefix + "quantity", preset(surface.extent(), item.unit()));
            }
        }
        // What is on the quote is checked, also where its service or surface is no longer active.
        prefixes().filter(prefix -> !isFree(prefix)).forEach(prefix -> values.put(prefix + "on", "yes"));
        return new QuoteForm(
                fields.completedBy(values), surfaces, List.copyOf(serviceItems.values()), prices, distance);
    }

    private List<ServiceItem> missing(Surface surface) {
        List<String> there = rows(surface).stream()
                .map(prefix -> fields.typed(prefix + "serviceItem"))
                .toList();
        return sold().stream()
                .filter(item -> surface.active() && item.surfaceType() == surface.type())
                .filter(item -> !there.contains(item.id().toString()))
                .toList();
    }

    /** Everything that the book has a price for. */
    public List<ServiceItem> sold() {
        return serviceItems.values().stream()
                .filter(o -> o.active() && prices.priceOf(o.id()).isPresent())
                .toList();
    }

    private String preset(Quantity extent, Unit unit) {
        return fields.notation()
                .plain(extent.in(unit)
                        .value()
                        .setScale(PRESET_DECIMALS, RoundingMode.HALF_UP)
                        .stripTrailingZeros());
    }

    private static String prefix(int row) {
        return LINE + "-" + row + "-";
    }

    private boolean isFree(String prefix) {
        return fields.typed(prefix + "surface").isBlank();
    }

    /** Whether a row counts: it is checked, or something is typed into a free one. */
    private boolean counts(String prefix) {
        return isFree(prefix) ? isFilled(fields, prefix) : fields.ticked(prefix + "on");
    }

    private Stream<String> prefixes() {
        return fields.rows(LINE).stream().map(QuoteForm::prefix);
    }

    /** The service of a row; null where none is chosen. */
    public @Nullable ServiceItem item(String prefix) {
        return serviceItems.get(fields.typed(prefix + "serviceItem"));
    }

    /** The command that the form makes, of the rows that count. */
    <C extends Record> Form<C> of(Class<C> command) {
        return Form.sent(command, fields)
                .ignoring(prefixes()
                        .filter(prefix -> !counts(prefix))
                        .flatMap(prefix ->
                                Stream.of("serviceItem", "surface", "quantity").map(prefix::concat))
                        .toList())
                .in(this::unit);
    }

    private Unit unit(String path) {
        return path.equals("distance") ? distance : unitOf(path.replaceFirst("[^-]+$", ""));
    }

    /** What the quantity of a row is typed in. */
    public Unit unitOf(String prefix) {
        String chosen = fields.typed(prefix + "quantityUnit");
        ServiceItem item = item(prefix);
        return !chosen.isEmpty() ? Unit.ofCode(chosen) : item == null ? Unit.PIECE : item.unit();
    }

    /** The lines that can be read as they are typed, by the prefix of their fields; what is wrong with the others. */
    Map<String, QuoteScope.Line> readable(List<String> errors) {
        Map<String, QuoteScope.Line> lines = new LinkedHashMap<>();
        prefixes().filter(this::counts).forEach(prefix -> {
            MultivaluedMap<String, String> row = new MultivaluedHashMap<>();
            Stream.of("id", "serviceItem", "surface", "quantity", "quantityUnit")
                    .forEach(name -> row.putSingle(name, fields.typed(prefix + name)));
            Fields typed = Fields.of(row, fields.notation()).labeled("quotes", "quote");
            QuoteScope.Line line = Form.sent(QuoteScope.Line.class, typed)
                    .in(path -> unitOf(prefix))
                    .read();
            if (line != null) {
                lines.put(prefix, line);
            }
            typed.errors().values().stream()
                    .filter(error -> !errors.contains(error))
                    .forEach(errors::add);
        });
        return lines;
    }

    public Fields fields() {
        return fields;
    }

    ServiceItem serviceItem(ServiceItemId id) {
        return Objects.requireNonNull(serviceItems.get(id.toString()), () -> "not in the catalog: " + id);
    }

    /** What the distance is typed in. */
    public Unit distance() {
        String chosen = fields.typed("distanceUnit");
        return chosen.isEmpty() ? distance : Unit.ofCode(chosen);
    }

    /** What a stored line is, in words. */
    public String describe(Quote.Line line) {
        ServiceItem item = serviceItems.get(line.serviceItem().toString());
        String name = item == null ? "" : item.name();
        return surfaces.stream()
                .filter(surface -> surface.id().equals(line.surface()))
                .findFirst()
                .map(surface -> name + ", " + surface.name())
                .orElse(name);
    }

    /** The surfaces that have rows. */
    public List<Surface> surfaces() {
        return surfaces.stream().filter(surface -> !rows(surface).isEmpty()).toList();
    }

    /** The prefixes of a surface's rows: what can be done on it, to check. */
    public List<String> rows(Surface surface) {
        String id = surface.id().toString();
        return prefixes()
                .filter(prefix -> fields.typed(prefix + "surface").equals(id) && item(prefix) != null)
                .toList();
    }

    /** The prefixes of all rows, for what is shown beside each. */
    public List<String> rows() {
        return prefixes().toList();
    }

    /** The numbers of the free rows that have something in them, and an empty one to fill. */
    public List<Integer> freeRows() {
        List<Integer> all = fields.rows(LINE);
        List<Integer> free = new ArrayList<>(all);
        free.removeIf(row -> !isFree(prefix(row)) || !isFilled(fields, prefix(row)));
        free.add(all.isEmpty() ? 0 : all.getLast() + 1);
        return free;
    }

    /** What the fields of rows are called, each with its work. */
    public Map<String, String> labels(View view) {
        Map<String, String> labels = new HashMap<>();
        prefixes().forEach(prefix -> {
            ServiceItem item = item(prefix);
            // A free row can be given another service while its label stands.
            String what = item == null || isFree(prefix) ? view.t("quotes.free") : item.name();
            labels.put(prefix + "quantity", view.t("quotes.quantity-of", what));
            labels.put(prefix + "serviceItem", view.t("quotes.serviceItem"));
        });
        return labels;
    }
}
