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
import eaveside.inventory.Location;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Ids;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SurfaceId;
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
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;

/** Collects what a sheet shows and offers, and what its fields are read against. */
@Dependent
public class SheetPages {
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final ReadFindings readFindings;
    private final ReadPhoto readPhoto;
    private final ReadStock readStock;
    private final Catalog catalog;
    private final VanStock vanStock;
    private final SheetCautions sheetCautions;
    private final SheetFacts sheetFacts;

    @Inject
    public SheetPages(
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            ReadFindings readFindings,
            ReadPhoto readPhoto,
            ReadStock readStock,
            Catalog catalog,
            VanStock vanStock,
            SheetCautions sheetCautions,
            SheetFacts sheetFacts) {
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.readFindings = readFindings;
        this.readPhoto = readPhoto;
        this.readStock = readStock;
        this.catalog = catalog;
        this.vanStock = vanStock;
        this.sheetCautions = sheetCautions;
        this.sheetFacts = sheetFacts;
    }

    Known known(Visit visit, boolean us) {
        return new Known(
                serviceItems(),
                surfaces(visit),
                readStock.items().stream().collect(Collectors.toMap(StockItem::id, Function.identity())),
                readFindings.types().stream()
                        .filter(FindingType::active)
                        .map(FindingType::code)
                        .collect(Collectors.toSet()),
                us ? Unit.US_GALLON : Unit.LITER,
                us ? Unit.MILE : Unit.KILOMETER);
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
        Map<ServiceItemId, ServiceItem> serviceItems = serviceItems();
        Map<SurfaceId, Surface> surfaces = surfaces(visit);
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
                sheetCautions.of(visit, site, serviceItems, surfaces, view),
                site.accessNotes(),
                sheetFacts.plan(visit),
                surfaces.values().stream().filter(Surface::active).toList(),
                choices(serviceItems, surfaces, view),
                stock,
                readPhoto.ofVisit(visit.id()).stream().map(Photo::id).toList(),
                fields);
    }

    private Choices choices(Map<ServiceItemId, ServiceItem> serviceItems, Map<SurfaceId, Surface> surfaces, View view) {
        Map<String, String> offered = new LinkedHashMap<>();
        serviceItems.values().stream()
                .filter(ServiceItem::active)
                .forEach(o -> offered.put(
                        o.id().toString(),
                        view.unit(o.unit()).isEmpty() ? o.name() : o.name() + " (" + view.unit(o.unit()) + ")"));
        Map<String, String> there = new LinkedHashMap<>();
        surfaces.values().stream().filter(Surface::active).forEach(s -> there.put(s.id().toString(), s.name()));
        Map<String, String> lines = new LinkedHashMap<>();
        catalog.lines().stream()
                .filter(ServiceLine::active)
                .forEach(line -> lines.put(line.id().toString(), line.name()));
        Map<String, String> types = new LinkedHashMap<>();
        readFindings.types().stream()
                .filter(FindingType::active)
                .forEach(type -> types.put(type.code().value(), type.name()));
        Map<String, String> severities = new LinkedHashMap<>();
        readFindings.severities().forEach(s -> severities.put(s.code().value(), s.name()));
        return new Choices(
                offered,
                there,
                lines,
                types,
                severities,
                view.us() ? Unit.US_GALLON : Unit.LITER,
                view.us() ? Unit.MILE : Unit.KILOMETER);
    }

    private Map<ServiceItemId, ServiceItem> serviceItems() {
        return catalog.serviceItems().stream()
                .collect(Collectors.toMap(ServiceItem::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
    }

    private Map<SurfaceId, Surface> surfaces(Visit visit) {
        return readSurfaces.ofSite(visit.site()).stream()
                .collect(Collectors.toMap(Surface::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
    }
}
