package eaveside.web.sheets;

import eaveside.access.Role;
import eaveside.access.User;
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
import eaveside.kernel.Unit;
import eaveside.visits.Visit;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import eaveside.web.sheets.SheetPage.Choices;
import eaveside.web.sheets.SheetPage.Stock;
import eaveside.web.visits.SheetFacts;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Collection;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.function.Predicate;
import java.util.stream.Collectors;

/** Collects what a sheet shows and offers, and what its fields are read against. */
@Dependent
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

    /** An empty sheet: its ids are made now, nothing else is said yet. */
    Fields blank(Visit visit, User signer, String location, LocalDate today) {
        Map<String, String> values = new HashMap<>();
        values.put("id", Ids.next().toString());
        values.put("count-id", Ids.next().toString());
        values.put("completedOn", (visit.date().isAfter(today) ? today : visit.date()).toString());
        List<Location> locations = vanStock.locations(signer, visit);
        values.put(
                "location",
                locations.stream()
                        .filter(p -> p.id().toString().equals(location))
                        .findFirst()
                        .or(() -> locations.stream().findFirst())
                        .map(p -> p.id().toString())
                        .orElse(""));
        for (int row = 0; row < visit.lines().size(); row++) {
            values.put("line-" + row + "-id", visit.lines().get(row).id().toString());
            values.putAll(Rows.blank("line-" + row + "-skip", 0));
        }
        int row = 0;
        for (Surface surface : readSurfaces.ofSite(visit.site())) {
            if (surface.active()) {
                values.put("surface-" + row++ + "-id", surface.id().toString());
            }
        }
        for (String group : List.of("extra", "finding", "reading", "mix", "brush", "item", "count")) {
            values.putAll(Rows.blank(group, 0));
        }
        return Fields.showing(values);
    }

    SheetPage of(Visit visit, User signer, Fields fields, View view) {
        Site site = readCustomer.site(visit.site());
        Known known = known(visit, view);
        List<Location> locations = vanStock.locations(signer, visit);
        Stock stock = locations.stream()
                .filter(p -> p.id().toString().equals(fields.typed("location")))
                .findFirst()
                .map(location -> vanStock.of(location, locations, view))
                .orElse(Stock.NONE);
        return new SheetPage(
                visit,
                readCustomer.customer(visit.customer()).name(),
                site.name(),
                site.address().oneLine(),
                signer.id().toString(),
                signer.role() == Role.TECHNICIAN,
                sheetCautions.of(visit, site, known, view),
                site.accessNotes(),
                sheetFacts.plan(visit),
                known.surfaces().values().stream().filter(Surface::active).toList(),
                choices(known, view),
                stock,
                readPhoto.ofVisit(visit.id()).stream().map(Photo::id).toList(),
                fields);
    }

    private Choices choices(Known known, View view) {
        return new Choices(
                named(
                        known.serviceItems().values(),
                        ServiceItem::active,
                        ServiceItem::id,
                        item -> VanStock.withUnit(item.name(), item.unit(), view)),
                named(known.surfaces().values(), Surface::active, Surface::id, Surface::name),
                named(catalog.lines(), ServiceLine::active, ServiceLine::id, ServiceLine::name),
                named(readFindings.types(), FindingType::active, FindingType::code, FindingType::name),
                named(readFindings.severities(), severity -> true, Severity::code, Severity::name),
                known.volume(),
                known.distance());
    }

    /** What a select offers: those in use, from what is sent to what is shown. */
    private static <T> Map<String, String> named(
            Collection<T> things, Predicate<T> offered, Function<T, Object> sent, Function<T, String> shown) {
        Map<String, String> named = new LinkedHashMap<>();
        things.stream()
                .filter(offered)
                .forEach(thing -> named.put(sent.apply(thing).toString(), shown.apply(thing)));
        return named;
    }
}
