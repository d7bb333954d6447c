package eaveside.web;

import eaveside.access.Role;
import eaveside.worklist.DueTotal;
import eaveside.worklist.DueType;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;

/**
 * The menu at the side, for office and owner: where to go, by what people do, with how much is due there.
 *
 * @param  groups the first has no heading
 */
public record Menu(List<Group> groups) {
    public Menu {
        groups = List.copyOf(groups);
    }

    /**
     * @param  key of the heading's text; empty for none
     */
    public record Group(String key, List<Entry> entries) {
        public Group {
            entries = List.copyOf(entries);
        }
    }

    /**
     * @param  key     of the text
     * @param  current whether the page belongs to it
     * @param  due     how much is due there; zero for nothing
     */
    public record Entry(String key, String href, boolean current, long due) {}

    /**
     * A place before it is known where the viewer is.
     *
     * @param  covers the addresses whose pages belong to it, its own at first
     * @param  open   whether the viewer may go there
     */
    private record Place(String name, List<String> covers, long due, boolean open) {
        static Place of(String name, String href, String... others) {
            return new Place(
                    name, Stream.concat(Stream.of(href), Stream.of(others)).toList(), 0, true);
        }

        Place due(Map<DueType, DueTotal> totals, DueType... types) {
            return new Place(
                    name,
                    covers,
                    Stream.of(types)
                            .filter(totals::containsKey)
                            .mapToLong(type ->
                                    Objects.requireNonNull(totals.get(type)).count())
                            .sum(),
                    open);
        }

        Place onlyIf(boolean may) {
            return new Place(name, covers, due, may);
        }

        /** How much of the path it covers; zero for none. */
        int covers(View view) {
            return covers.stream()
                    .filter(view::in)
                    .mapToInt(String::length)
                    .max()
                    .orElse(0);
        }
    }

    /** What the viewer may open, and where the viewer is: the place whose address covers most of the path. */
    public static Menu of(View view) {
        Map<DueType, DueTotal> due = view.due();
        boolean owner = view.is(Role.OWNER);
        List<List<Place>> all = List.of(
                List.of(
                        Place.of("overview", "/overview").onlyIf(owner),
                        Place.of("worklist", "/worklist").due(due, DueType.values())),
                List.of(
                        Place.of("quotes", "/quotes").due(due, DueType.QUOTE, DueType.ACCEPTED),
                        Place.of("visits", "/visits", "/sheets")
                                .due(
                                        due,
                                        DueType.SHEET,
                                        DueType.NOTE,
                                        DueType.LATE,
                                        DueType.BILL,
                                        DueType.DECIDE,
                                        DueType.RETURN),
                        Place.of("findings", "/findings").due(due, DueType.FINDING)),
                List.of(Place.of("customers", "/customers", "/sites")),
                List.of(
                        Place.of("invoices", "/invoices").due(due, DueType.DRAFT),
                        Place.of("payments", "/payments"),
                        Place.of("aging", "/invoices/aging").due(due, DueType.PAST_DUE),
                        Place.of("margins", "/margins").onlyIf(owner),
                        Place.of("books", "/books", "/documents").onlyIf(view.seesBooks())),
                List.of(
                        Place.of("stock", "/stock").due(due, DueType.STOCK),
                        Place.of("items", "/stock/items"),
                        Place.of("mixes", "/stock/mixes"),
                        Place.of("locations", "/stock/locations")),
                List.of(
                        Place.of("prices", "/prices"),
                        Place.of("services", "/settings/services"),
                        Place.of("vehicles", "/vehicles"),
                        Place.of("settings", "/settings")));
        List<List<Place>> places = all.stream()
                .map(group -> group.stream().filter(Place::open).toList())
                .toList();
        List<String> headings = List.of("", "work", "customers", "money", "stock", "company");
        Place here = places.stream()
                .flatMap(List::stream)
                .max(Comparator.comparingInt(place -> place.covers(view)))
                .filter(place -> place.covers(view) > 0)
                .orElse(null);
        List<Group> groups = new ArrayList<>();
        for (int i = 0; i < places.size(); i++) {
            groups.add(new Group(
                    headings.get(i).isEmpty() ? "" : "common.group." + headings.get(i),
                    places.get(i).stream()
                            .map(place -> new Entry(
                                    "common.nav." + place.name(),
                                    place.covers().getFirst(),
                                    place == here,
                                    place.due()))
                            .toList()));
        }
        return new Menu(groups);
    }
}
