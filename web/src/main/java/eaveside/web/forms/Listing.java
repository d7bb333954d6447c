package eaveside.web.forms;

import eaveside.kernel.Money;
import eaveside.kernel.Records;
import eaveside.kernel.Slice;
import eaveside.web.Csv;
import eaveside.web.View;
import eaveside.web.Xlsx;
import jakarta.ws.rs.core.MultivaluedHashMap;
import jakarta.ws.rs.core.MultivaluedMap;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * A list that people search while they type, page through, and take along as a file: said once by a resource, shown by one
 * template. Its texts come from a bundle: {@code title}, a label for each column under the column's name, {@code empty},
 * {@code none-found}, and {@code search} where it can be searched.
 *
 * @param <R> a row
 */
public final class Listing<R> {
    /** What the address says of how the list is arranged: by which column, and which columns. */
    static final List<String> ARRANGED = List.of("sort", "cols");

    private static final int PAGE = 40;
    private static final int FILE_PAGE = 200;
    private static final int MOST_ROWS_OF_A_FILE = 50_000;

    final String bundle;
    final String address;
    private final Source<R> source;
    final List<Column<R>> columns = new ArrayList<>();
    final List<Action> actions = new ArrayList<>();
    final List<String> switches = new ArrayList<>();
    final Map<String, Class<? extends Enum<?>>> choices = new LinkedHashMap<>();
    final Map<String, Enum<?>> presets = new LinkedHashMap<>();
    final List<String> kept = new ArrayList<>();
    final List<String> cautions = new ArrayList<>();
    String tag = "";
    Predicate<R> tagged = row -> false;
    String about = "";
    String title = "";
    String sentence = "";
    String within = "";
    String withinKey = "";
    boolean searched;
    private List<String> searchedBy = List.of();
    private final boolean whole;

    private Listing(String bundle, String address, Source<R> source, boolean whole) {
        this.bundle = bundle;
        this.address = address;
        this.source = source;
        this.whole = whole;
    }

    /**
     * What the list asks for.
     *
     * @param  search what was typed; empty for everything
     * @param  after  key of the page before; null for the first
     */
    public record Query(
            String search,
            MultivaluedMap<String, String> filters,
            @Nullable String after,
            int size) {
        /** Whether each word that was typed stands in one of the texts, for lists that are read whole. */
        public boolean finds(String... texts) {
            String all = String.join(" ", texts).toLowerCase(Locale.ROOT);
            return Stream.of(search.toLowerCase(Locale.ROOT).strip().split("\\s+"))
                    .allMatch(all::contains);
        }

        public boolean isOn(String name) {
            return !value(name).isEmpty();
        }

        /** What the address says for a name; empty where it says nothing. */
        public String value(String name) {
            return Listing.value(filters, name);
        }

        /** What is chosen; null where nothing, or nothing that there is. */
        public <E extends Enum<E>> @Nullable E chosen(String name, Class<E> type) {
            return Stream.of(type.getEnumConstants())
                    .filter(constant -> constant.name().equals(value(name)))
                    .findFirst()
                    .orElse(null);
        }
    }

    /** Where rows come from, a page at a time. */
    public interface Source<R> {
        Slice<R> read(Query query);
    }

    /**
     * A column.
     *
     * @param  value  of any type that {@link View} can write
     * @param  opens  the address that the cell leads to, or null
     */
    record Column<R>(
            String name,
            Function<R, @Nullable Object> value,
            @Nullable Function<R, @Nullable String> opens) {}

    /** A link above the list; its text is of the list's bundle. */
    public record Action(String key, String href, boolean quiet) {}

    /** A list at an address, whose texts are of that bundle. */
    public static <R> Listing<R> of(String bundle, String address, Source<R> source) {
        return new Listing<>(bundle, address, source, false);
    }

    /** A list that is short enough to come whole; people sort it by any column. */
    public static <R> Listing<R> whole(String bundle, String address, Function<Query, List<R>> rows) {
        return new Listing<>(bundle, address, query -> new Slice<>(rows.apply(query), null), true);
    }

    /** Columns of the row's own components, by their names. */
    public Listing<R> columns(String... names) {
        for (String name : names) {
            columns.add(new Column<>(name, row -> component(row, name), null));
        }
        return this;
    }

    public Listing<R> column(String name, Function<R, @Nullable Object> value) {
        columns.add(new Column<>(name, value, null));
        return this;
    }

    /** A column that leads on; a cell whose address is null does not. */
    public Listing<R> column(String name, Function<R, @Nullable Object> value, Function<R, @Nullable String> href) {
        columns.add(new Column<>(name, value, href));
        return this;
    }

    /** A column of the row's own component that leads on. */
    public Listing<R> opening(String name, Function<R, @Nullable String> href) {
        columns.add(new Column<>(name, row -> component(row, name), href));
        return this;
    }

    /** Marks the rows for which the condition holds with a word of the bundle, beside what their first column says. */
    public Listing<R> tagged(String key, Predicate<R> condition) {
        tag = key;
        tagged = condition;
        return this;
    }

    /** A link above the list. */
    public Listing<R> action(String key, String href) {
        actions.add(new Action(bundle + "." + key, href, false));
        return this;
    }

    /** A link above the list to what is wanted less often. */
    public Listing<R> quietly(String key, String href) {
        actions.add(new Action(bundle + "." + key, href, true));
        return this;
    }

    /** A page that the list belongs to, as a link above it. */
    public Listing<R> within(String key, String href) {
        within = href;
        withinKey = key;
        return this;
    }

    /** Says in a sentence or two what to know of the list; the text is of the bundle. */
    public Listing<R> about(String key) {
        about = bundle + "." + key;
        return this;
    }

    /** A heading of the list's own, in words, instead of its bundle's. */
    public Listing<R> titled(String words) {
        title = words;
        return this;
    }

    /** What the list comes to, in words that are known only now. */
    public Listing<R> saying(String words) {
        sentence = words;
        return this;
    }

    /** What to mind where work can hurt, or a setting be wrong; the texts are of the bundle. */
    public Listing<R> cautions(String... keys) {
        for (String key : keys) {
            cautions.add(bundle + "." + key);
        }
        return this;
    }

    /** Lets people search. */
    public Listing<R> searched() {
        searched = true;
        return this;
    }

    /** Lets people search what the row's own components of those names say, in a list that comes whole. */
    public Listing<R> searchedBy(String... names) {
        searchedBy = List.of(names);
        return searched();
    }

    private Slice<R> read(Query query) {
        Slice<R> slice = source.read(query);
        Sort sort = Sort.asked(query.filters());
        Column<R> column = isSortable(sort.column()) ? column(sort.column()) : null;
        if (searchedBy.isEmpty() && column == null) {
            return slice;
        }
        Stream<R> found = slice.rows().stream().filter(row -> searchedBy.isEmpty() || isFound(row, query));
        return new Slice<>((column == null ? found : found.sorted(sort.by(column.value()))).toList(), slice.next());
    }

    private @Nullable Column<R> column(String name) {
        return columns.stream()
                .filter(column -> column.name().equals(name))
                .findFirst()
                .orElse(null);
    }

    /** Whether people sort by the column. */
    boolean isSortable(String column) {
        return whole && column(column) != null;
    }

    /** The columns that are shown: those that the address names, all where it names none that there is. */
    List<Column<R>> shownColumns(MultivaluedMap<String, String> filters) {
        List<String> named = filters.getOrDefault("cols", List.of());
        List<Column<R>> shown =
                columns.stream().filter(column -> named.contains(column.name())).toList();
        return shown.isEmpty() ? columns : shown;
    }

    private boolean isFound(R row, Query query) {
        return query.finds(searchedBy.stream()
                .map(name -> Objects.toString(component(row, name), ""))
                .toArray(String[]::new));
    }

    /** A box to check that widens or narrows the list; its text is of the bundle under its name. */
    public Listing<R> toggle(String name) {
        switches.add(name);
        return this;
    }

    /** A choice that narrows the list; its texts are of the bundle: the name, each constant, and {@code all}. */
    public Listing<R> choice(String name, Class<? extends Enum<?>> type) {
        choices.put(name, type);
        return this;
    }

    /** The same where there is no showing all: one of them is chosen until another is. */
    public Listing<R> choice(String name, Class<? extends Enum<?>> type, Enum<?> preset) {
        presets.put(name, preset);
        return choice(name, type);
    }

    /** What the address says, once or several times, and what stays so while people search and page. */
    public Listing<R> kept(String... names) {
        kept.addAll(List.of(names));
        return this;
    }

    /** The page that was asked for. */
    public ListPage<R> page(UriInfo asked) {
        MultivaluedMap<String, String> filters = asked.getQueryParameters();
        Slice<R> slice = read(query(filters, filters.getFirst("after"), PAGE));
        return new ListPage<>(
                this,
                search(filters),
                switches.stream().filter(name -> isOn(filters, name)).toList(),
                filters,
                slice.rows(),
                link(address + "/list.csv", filters, null),
                link(address + "/list.xlsx", filters, null),
                slice.next() == null ? null : link(address, filters, slice.next()));
    }

    /** The same list as a file, whole, with the columns that are shown. */
    public Response csv(UriInfo asked, View view) {
        List<Column<R>> shown = shownColumns(asked.getQueryParameters());
        return Csv.download(
                address.substring(address.lastIndexOf('/') + 1),
                shown.stream().map(column -> label(view, column.name())).toList(),
                all(asked).stream()
                        .map(row -> shown.stream()
                                .map(column -> file(view, column, row))
                                .toList())
                        .toList());
    }

    /** The same as a spreadsheet. A measure is in the unit that it is kept in, beside which its unit's name has no place. */
    public Response xlsx(UriInfo asked, View view) {
        List<Column<R>> shown = shownColumns(asked.getQueryParameters());
        return Xlsx.download(
                address.substring(address.lastIndexOf('/') + 1),
                shown.stream().map(column -> label(view, column.name())).toList(),
                all(asked).stream()
                        .map(row -> shown.stream()
                                .<@Nullable Object>map(column -> cell(view, column, row))
                                .toList())
                        .toList());
    }

    /** What a spreadsheet reckons with as it is, all else in words. */
    private @Nullable Object cell(View view, Column<R> column, R row) {
        Object value = column.value().apply(row);
        return value instanceof Money || value instanceof LocalDate || value instanceof Number
                ? value
                : shown(view, column.name(), value);
    }

    /** Every row of the list that was asked for, for a file of it. */
    public List<R> all(UriInfo asked) {
        MultivaluedMap<String, String> filters = asked.getQueryParameters();
        List<R> rows = new ArrayList<>();
        String after = null;
        do {
            Slice<R> slice = read(query(filters, after, FILE_PAGE));
            rows.addAll(slice.rows());
            after = slice.next();
        } while (after != null && rows.size() < MOST_ROWS_OF_A_FILE);
        return rows;
    }

    private Query query(MultivaluedMap<String, String> filters, @Nullable String after, int size) {
        return new Query(search(filters), filters, after, size);
    }

    static String value(MultivaluedMap<String, String> filters, String name) {
        return Objects.requireNonNullElse(filters.getFirst(name), "");
    }

    private static String search(MultivaluedMap<String, String> filters) {
        return value(filters, "q");
    }

    static boolean isOn(MultivaluedMap<String, String> filters, String name) {
        return !value(filters, name).isEmpty();
    }

    /** The address of the same list with what narrows it, after a key where there is one. */
    private String link(String path, MultivaluedMap<String, String> filters, @Nullable String after) {
        List<String> query = new ArrayList<>();
        Stream.of(searched ? List.of("q") : List.<String>of(), switches, kept, choices.keySet(), ARRANGED)
                .flatMap(Collection::stream)
                .filter(name -> isOn(filters, name))
                .forEach(name -> filters.getOrDefault(name, List.of()).forEach(value -> query.add(said(name, value))));
        if (after != null) {
            query.add(said("after", after));
        }
        return query.isEmpty() ? path : path + "?" + String.join("&", query);
    }

    /** The address of the same list from its start, sorted by the column, or the other way round where it is so already. */
    String sortedBy(String column, MultivaluedMap<String, String> filters) {
        MultivaluedMap<String, String> asked = new MultivaluedHashMap<>(filters);
        asked.putSingle("sort", Sort.asked(filters).next(column));
        return link(address, asked, null);
    }

    private static String said(String name, String value) {
        return name + "=" + URLEncoder.encode(value, StandardCharsets.UTF_8);
    }

    private static @Nullable Object component(Object row, String name) {
        return Records.values((Record) row).get(name);
    }

    String label(View view, String column) {
        String own = view.t(bundle + "." + column);
        return own.equals(bundle + "." + column) ? view.t("common." + column) : own;
    }

    String shown(View view, String column, @Nullable Object value) {
        return value instanceof Enum<?> choice ? view.t(bundle + "." + column, choice) : view.written(value);
    }

    private String file(View view, Column<R> column, R row) {
        Object value = column.value().apply(row);
        // A spreadsheet reckons with what is written plainly, and with nothing else.
        return switch (value) {
            case Money amount -> amount.amount().toPlainString();
            case LocalDate day -> day.toString();
            case null -> "";
            default -> shown(view, column.name(), value);
        };
    }
}
