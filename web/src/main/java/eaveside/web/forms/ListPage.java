package eaveside.web.forms;

import eaveside.web.Page;
import eaveside.web.View;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What the template shows.
 *
 * @param  csv  the address of the list as a file
 * @param  xlsx the address of the list as a spreadsheet
 * @param  more the address of the next page, or null
 */
public record ListPage<R>(
        Listing<R> list,
        String search,
        List<String> on,
        MultivaluedMap<String, String> filters,
        List<R> rows,
        String csv,
        String xlsx,
        @Nullable String more)
        implements Page {
    @Override
    public String template() {
        return "parts/list.jte";
    }

    public String title(View view) {
        return list.title.isEmpty() ? text(view, "title") : list.title;
    }

    /** What the list comes to; empty where nothing is said of it. */
    public String sentence() {
        return list.sentence;
    }

    public String text(View view, String key, Object... arguments) {
        return view.t(list.bundle + "." + key, arguments);
    }

    public String address() {
        return list.address;
    }

    /** The address of the page that the list belongs to; empty for none. */
    public String within() {
        return list.within;
    }

    public String withinText(View view) {
        return view.t(list.withinKey);
    }

    /** What the list is; empty where it needs no words. */
    public String about(View view) {
        return list.about.isEmpty() ? "" : view.t(list.about);
    }

    public List<String> cautions(View view) {
        return list.cautions.stream().map(key -> view.t(key)).toList();
    }

    public boolean isSearched() {
        return list.searched;
    }

    public List<String> switches() {
        return list.switches;
    }

    public Set<String> choices() {
        return list.choices.keySet();
    }

    /** The choices under a name, each with its text. */
    public Map<String, String> options(View view, String name) {
        Map<String, String> options = new LinkedHashMap<>();
        if (!list.presets.containsKey(name)) {
            options.put("", text(view, name + ".all"));
        }
        for (Enum<?> constant : Objects.requireNonNull(list.choices.get(name)).getEnumConstants()) {
            options.put(constant.name(), view.t(list.bundle + "." + name, constant));
        }
        return options;
    }

    public String chosen(String name) {
        Enum<?> preset = list.presets.get(name);
        return Listing.isOn(filters, name)
                ? String.valueOf(filters.getFirst(name))
                : preset == null ? "" : preset.name();
    }

    /** Whether a search or a choice narrows the list. */
    public boolean isNarrowed() {
        return !search.isEmpty() || list.choices.keySet().stream().anyMatch(name -> Listing.isOn(filters, name));
    }

    public List<String> kept() {
        return Stream.concat(list.kept.stream(), Listing.ARRANGED.stream())
                .filter(name -> Listing.isOn(filters, name))
                .toList();
    }

    public List<String> all(String name) {
        return filters.getOrDefault(name, List.of());
    }

    public List<Listing.Action> actions() {
        return list.actions;
    }

    /**
     * A column's head.
     *
     * @param  sorts the address of the list sorted by it; null where it cannot be
     * @param  aria  how the list is sorted by it; null where it is not
     */
    public record Head(
            String label, @Nullable String sorts, @Nullable String aria) {}

    public List<Head> heads(View view) {
        return list.shownColumns(filters).stream()
                .map(column -> new Head(
                        list.label(view, column.name()),
                        list.isSortable(column.name()) ? list.sortedBy(column.name(), filters) : null,
                        Sort.asked(filters).aria(column.name())))
                .toList();
    }

    /** Every column that there is: its name, its label, and whether it is shown. */
    public record Choice(String name, String label, boolean shown) {}

    public List<Choice> columns(View view) {
        List<Listing.Column<R>> shown = list.shownColumns(filters);
        return list.columns.stream()
                .map(column -> new Choice(column.name(), list.label(view, column.name()), shown.contains(column)))
                .toList();
    }

    /** What stays as it is while columns are chosen: name and value. */
    public List<Map.Entry<String, String>> besidesColumns() {
        return Stream.of(
                        isSearched() ? List.of("q") : List.<String>of(),
                        list.switches,
                        list.kept,
                        List.copyOf(list.choices.keySet()),
                        List.of("sort"))
                .flatMap(List::stream)
                .filter(name -> Listing.isOn(filters, name))
                .flatMap(name -> all(name).stream().map(value -> Map.entry(name, value)))
                .toList();
    }

    /** The cells of a row, each as it is read. */
    public List<Cell> cells(View view, R row) {
        List<Cell> cells = new ArrayList<>();
        for (Listing.Column<R> column : list.shownColumns(filters)) {
            Object value = column.value().apply(row);
            Function<R, @Nullable String> opens = column.opens();
            cells.add(new Cell(
                    list.shown(view, column.name(), value),
                    opens == null ? null : opens.apply(row),
                    View.isFigure(value) ? "num" : "",
                    cells.isEmpty() && list.tagged.test(row) ? text(view, list.tag) : ""));
        }
        return cells;
    }

    /**
     * A cell as the template shows it.
     *
     * @param  tag a word beside the text; may be empty
     */
    public record Cell(String text, @Nullable String href, String style, String tag) {}
}
