package eaveside.web.sheets;

import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.catalog.ServiceLine;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.findings.FindingType;
import eaveside.findings.Photo;
import eaveside.findings.ReadFindings;
import eaveside.findings.ReadPhoto;
import eaveside.findings.Severity;
import eaveside.inventory.Location;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Id;
import eaveside.kernel.Ids;
import eaveside.kernel.Shared;
import eaveside.kernel.Unit;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Options;
import eaveside.web.security.Viewer;
import eaveside.web.sheets.SheetPage.Choices;
import eaveside.web.sheets.SheetPage.Stock;
import eaveside.web.visits.SheetFacts;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Collects what a sheet shows and offers, and what its fields are read against. */
@Shared
public class SheetPages {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadFindings readFindings;

    @Inject
    ReadPhoto readPhoto;

    @Inject
    ReadStock readStock;

    @Inject
    Catalog catalog;

    @Inject
    VanStock vanStock;

    @Inject
    SheetCautions sheetCautions;

    @Inject
    SheetFacts sheetFacts;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    Known known(Visit visit, View view) {
        return new Known(
                byId(catalog.serviceItems(), ServiceItem::id),
                byId(readSurfaces.ofSite(visit.site()), Surface::id),
                byId(readStock.items(), StockItem::id),
                readFindings.types().stream()
                        .filter(FindingType::active)
                        .map(FindingType::code)
                        .collect(Collectors.toSet()),
                view.us() ? Unit.US_GALLON : Unit.LITER,
                view.us() ? Unit.MILE : Unit.KILOMETER);
    }

    private static <T> Map<String, T> byId(List<T> things, Function<T, Id> id) {
        return things.stream()
                .collect(Collectors.toMap(
                        thing -> id.apply(thing).toString(), Function.identity(), (a, b) -> a, LinkedHashMap::new));
    }

    /**
     * An empty sheet: its ids are made now, nothing else is said yet.
     *
     * @param  location asked for; the likeliest where it is none to draw from
     */
    SheetPage blank(Visit visit, String location) {
        LocalDate today = viewer.view().today();
        Map<String, String> values = new HashMap<>();
        values.put("id", Ids.next().toString());
        values.put("count-id", Ids.next().toString());
        values.put("completedOn", (visit.date().isAfter(today) ? today : visit.date()).toString());
        List<String> locations = vanStock.locations(visit).stream()
                .map(known -> known.id().toString())
                .toList();
        values.put(
                "location",
                locations.contains(location)
                        ? location
                        : locations.stream().findFirst().orElse(""));
        for (int row = 0; row < visit.lines().size(); row++) {
            values.put("line-" + row + "-id", visit.lines().get(row).id().toString());
            values.putAll(Rows.blank("line-" + row + "-skip", 0));
        }
        int row = 0;
        for (Surface surface : active(readSurfaces.ofSite(visit.site()))) {
            values.put("surface-" + row++ + "-id", surface.id().toString());
        }
        for (String group : List.of("extra", "finding", "reading", "mix", "brush", "item", "count")) {
            values.putAll(Rows.blank(group, 0));
        }
        return of(visit, Fields.showing(values));
    }

    private static List<Surface> active(Collection<Surface> surfaces) {
        return surfaces.stream().filter(Surface::active).toList();
    }

    SheetPage of(Visit visit, Fields fields) {
        View view = viewer.view();
        Site site = readCustomer.site(visit.site());
        Known known = known(visit, view);
        List<Location> locations = vanStock.locations(visit);
        Stock stock = locations.stream()
                .filter(p -> p.id().toString().equals(fields.typed("location")))
                .findFirst()
                .map(location -> vanStock.of(location, locations, view))
                .orElse(Stock.NONE);
        return new SheetPage(
                visit,
                names.customer(visit.customer()),
                site,
                sheetCautions.of(visit, site, known, view),
                sheetFacts.plan(visit),
                active(known.surfaces().values()),
                choices(known, view),
                stock,
                readPhoto.ofVisit(visit.id()).stream().map(Photo::id).toList(),
                fields);
    }

    private Choices choices(Known known, View view) {
        return new Choices(
                Options.of(
                        known.serviceItems().values().stream().filter(ServiceItem::active),
                        ServiceItem::id,
                        item -> VanStock.withUnit(item.name(), item.unit(), view)),
                Options.of(active(known.surfaces().values()).stream(), Surface::id, Surface::name),
                Options.of(catalog.lines().stream().filter(ServiceLine::active), ServiceLine::id, ServiceLine::name),
                Options.of(
                        readFindings.types().stream().filter(FindingType::active),
                        FindingType::code,
                        FindingType::name),
                Options.of(readFindings.severities().stream(), Severity::code, Severity::name),
                known.volume(),
                known.distance());
    }
}
