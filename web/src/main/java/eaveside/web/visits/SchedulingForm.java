package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.User;
import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.Ids;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.Quote;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.ScopeChange;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import eaveside.web.forms.Fields;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** What the booking form shows and asks: given work of a quote or a return, or lines to fill for a site's surfaces. */
@Dependent
public class SchedulingForm {
    /** Rows beyond those of the site's surfaces. */
    private static final int FREE_ROWS = 2;

    private final ReadQuotes readQuotes;
    private final ReadVisits readVisits;
    private final ReadSheets readSheets;
    private final ReadCustomer readCustomer;
    private final ReadSurfaces readSurfaces;
    private final ReadUsers readUsers;
    private final Catalog catalog;

    @Inject
    public SchedulingForm(
            ReadQuotes readQuotes,
            ReadVisits readVisits,
            ReadSheets readSheets,
            ReadCustomer readCustomer,
            ReadSurfaces readSurfaces,
            ReadUsers readUsers,
            Catalog catalog) {
        this.readQuotes = readQuotes;
        this.readVisits = readVisits;
        this.readSheets = readSheets;
        this.readCustomer = readCustomer;
        this.readSurfaces = readSurfaces;
        this.readUsers = readUsers;
        this.catalog = catalog;
    }

    /** Work that the quote or the return names already. */
    public record Given(String serviceItem, String surface, Quantity quantity) {}

    /**
     * What the form shows.
     *
     * @param  quoteNumber null without a quote
     * @param  given       empty for a free booking
     * @param  rows        the rows to fill in
     * @param  suggested   what the rows say at first
     */
    public record Form(
            String customer,
            Site site,
            @Nullable Long quoteNumber,
            boolean isReturn,
            List<Given> given,
            List<User> staff,
            Map<String, String> surfaces,
            List<Row> rows,
            Map<String, String> suggested) {}

    /**
     * A row to fill in.
     *
     * @param  surface   that the row is for; null where one can be chosen
     * @param  serviceItems that are done on it
     */
    public record Row(int number, @Nullable Surface surface, Map<String, String> serviceItems) {}

    static QuoteId quote(Fields fields) {
        return QuoteId.of(fields.typed("quote"));
    }

    Form of(Fields fields) {
        Map<ServiceItemId, ServiceItem> serviceItems = catalog.serviceItems().stream()
                .collect(Collectors.toMap(ServiceItem::id, Function.identity(), (a, b) -> a, LinkedHashMap::new));
        if (!fields.typed("quote").isEmpty()) {
            Quote quote = readQuotes.quote(quote(fields));
            return given(quote.site(), quote.number(), ofQuote(quote, serviceItems));
        }
        if (!fields.typed("return").isEmpty()) {
            Visit first = readVisits.visit(VisitId.of(fields.typed("return")));
            return given(first.site(), null, ofReturn(first, serviceItems));
        }
        return free(readCustomer.site(SiteId.of(fields.typed("site"))), fields, serviceItems);
    }

    private List<Given> ofQuote(Quote quote, Map<ServiceItemId, ServiceItem> serviceItems) {
        Map<SurfaceId, Surface> surfaces = surfacesOf(quote.site());
        return quote.lines().stream()
                .map(line -> given(line.serviceItem(), line.surface(), line.quantity(), serviceItems, surfaces))
                .toList();
    }

    private List<Given> ofReturn(Visit first, Map<ServiceItemId, ServiceItem> serviceItems) {
        Map<SurfaceId, Surface> surfaces = surfacesOf(first.site());
        Map<VisitLineId, Visit.Line> lines =
                first.lines().stream().collect(Collectors.toMap(Visit.Line::id, Function.identity()));
        List<Given> given = new ArrayList<>();
        if (first.sheet() != null) {
            for (ScopeChange scopeChange : readSheets.sheet(first.sheet()).scopeChanges()) {
                Visit.Line line = lines.get(scopeChange.line());
                if (scopeChange.decision() == ScopeDecision.RETURN_VISIT && line != null) {
                    given.add(
                            given(line.serviceItem(), line.surface(), scopeChange.quantity(), serviceItems, surfaces));
                }
            }
        }
        return given;
    }

    private Map<SurfaceId, Surface> surfacesOf(SiteId site) {
        return readSurfaces.ofSite(site).stream().collect(Collectors.toMap(Surface::id, Function.identity()));
    }

    private static Given given(
            ServiceItemId serviceItemId,
            @Nullable SurfaceId surfaceId,
            Quantity quantity,
            Map<ServiceItemId, ServiceItem> serviceItems,
            Map<SurfaceId, Surface> surfaces) {
        ServiceItem serviceItem = serviceItems.get(serviceItemId);
        Surface surface = surfaceId == null ? null : surfaces.get(surfaceId);
        return new Given(
                serviceItem == null ? "" : serviceItem.name(), surface == null ? "" : surface.name(), quantity);
    }

    private Form given(SiteId siteId, @Nullable Long quoteNumber, List<Given> given) {
        Site site = readCustomer.site(siteId);
        return new Form(
                readCustomer.customer(site.customerId()).name(),
                site,
                quoteNumber,
                quoteNumber == null,
                given,
                staff(),
                Map.of(),
                List.of(),
                Map.of());
    }

    private Form free(Site site, Fields fields, Map<ServiceItemId, ServiceItem> known) {
        List<Surface> surfaces =
                readSurfaces.ofSite(site.id()).stream().filter(Surface::active).toList();
        Map<String, String> suggested = suggested(surfaces);
        List<Integer> numbers = fields.rows("line");
        if (numbers.isEmpty()) {
            numbers = Fields.showing(suggested).rows("line");
        }
        Map<String, String> all = serviceItems(known, null);
        List<Row> rows = numbers.stream()
                .map(row -> {
                    Surface surface = row < surfaces.size() ? surfaces.get(row) : null;
                    return new Row(row, surface, surface == null ? all : serviceItems(known, surface));
                })
                .toList();
        Map<String, String> names = new LinkedHashMap<>();
        surfaces.forEach(s -> names.put(s.id().toString(), s.name()));
        return new Form(
                readCustomer.customer(site.customerId()).name(),
                site,
                null,
                false,
                List.of(),
                staff(),
                names,
                rows,
                suggested);
    }

    private static Map<String, String> serviceItems(Map<ServiceItemId, ServiceItem> known, @Nullable Surface surface) {
        Map<String, String> serviceItems = new LinkedHashMap<>();
        known.values().stream()
                .filter(ServiceItem::active)
                .filter(o -> surface == null || o.surfaceType() == null || o.surfaceType() == surface.type())
                .forEach(o -> serviceItems.put(o.id().toString(), o.name()));
        return serviceItems;
    }

    /** A row for each surface with all of it, to be given a service; and a few empty ones. */
    private static Map<String, String> suggested(List<Surface> surfaces) {
        Map<String, String> values = new HashMap<>();
        for (int row = 0; row < surfaces.size() + FREE_ROWS; row++) {
            String prefix = "line-" + row + "-";
            values.put(prefix + "id", Ids.next().toString());
            if (row < surfaces.size()) {
                Surface surface = surfaces.get(row);
                values.put(prefix + "surface", surface.id().toString());
                values.put(prefix + "quantity", surface.extent().value().toPlainString());
            }
        }
        return values;
    }

    /** Active people, those who usually climb first. */
    private List<User> staff() {
        return readUsers.all().stream()
                .filter(User::active)
                .sorted(Comparator.comparing((User user) -> user.role() != Role.TECHNICIAN))
                .toList();
    }

    /** The filled rows; a row without a service is left out. Errors are noted at the fields. */
    List<ScheduleVisit.Line> lines(Fields fields) {
        List<ScheduleVisit.Line> lines = new ArrayList<>();
        for (int row : fields.rows("line")) {
            String prefix = "line-" + row + "-";
            if (fields.typed(prefix + "serviceItem").isEmpty()) {
                continue;
            }
            ServiceItem serviceItem = catalog.serviceItem(ServiceItemId.of(fields.typed(prefix + "serviceItem")));
            String surface = fields.typed(prefix + "surface");
            Quantity quantity = fields.quantity(prefix + "quantity", serviceItem.unit());
            if (!fields.hasErrors() && !quantity.isPositive()) {
                fields.wrong(prefix + "quantity", "visits.more-than-nothing");
            }
            lines.add(new ScheduleVisit.Line(
                    new VisitLineId(fields.id(prefix + "id")),
                    serviceItem.id(),
                    surface.isEmpty() ? null : SurfaceId.of(surface),
                    quantity));
        }
        if (lines.isEmpty()) {
            fields.wrong("lines", "visits.lines.missing");
        }
        return lines;
    }
}
