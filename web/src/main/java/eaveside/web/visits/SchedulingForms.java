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
import eaveside.kernel.Unit;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.pricing.Quote;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadVisits;
import eaveside.visits.Scheduling;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.visits.SchedulingPage.Said;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.function.Function;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Makes the form for a visit, new or as it was sent. */
@Dependent
public class SchedulingForms {
    private static final String LINE = "line";

    /** Rows beyond those of the site's surfaces. */
    private static final int FREE_ROWS = 2;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadUsers readUsers;

    @Inject
    Catalog catalog;

    static Stream<String> prefixes(Fields fields) {
        return fields.rows(LINE).stream().map(row -> LINE + "-" + row + "-");
    }

    /** The form as it is shown first: where there is work to fill in, each surface suggests all of itself. */
    SchedulingPage fresh(Fields fields) {
        return fields.typed("site").isEmpty()
                ? sent(fields)
                : sent(fields.completedBy(suggested(activeSurfaces(SiteId.of(fields.typed("site"))), fields)));
    }

    /** The form that was sent. A row counts once a service is chosen in it. */
    SchedulingPage sent(Fields fields) {
        Map<ServiceItemId, ServiceItem> items =
                catalog.serviceItems().stream().collect(Collectors.toMap(ServiceItem::id, Function.identity()));
        Form<Scheduling> form = Form.sent(Scheduling.class, fields)
                .labeled("visits")
                .ignoring(prefixes(fields)
                        .filter(prefix -> fields.typed(prefix + "serviceItem").isEmpty())
                        .flatMap(prefix -> Stream.of("surface", "quantity").map(prefix::concat))
                        .toList())
                .in(path -> unit(fields, path, items));
        if (!fields.typed("quote").isEmpty()) {
            Quote quote = readQuotes.quote(QuoteId.of(fields.typed("quote")));
            return said(form, quote.site(), quote.number(), ofQuote(quote, items));
        }
        if (!fields.typed("returnsTo").isEmpty()) {
            Visit first = readVisits.visit(VisitId.of(fields.typed("returnsTo")));
            return said(form, first.site(), null, ofReturn(first, items));
        }
        Site site = readCustomer.site(SiteId.of(fields.typed("site")));
        return page(
                form,
                site,
                null,
                List.of(),
                activeSurfaces(site.id()),
                catalog.serviceItems().stream().filter(ServiceItem::active).toList());
    }

    /** What a quantity is typed in where its row does not say so: the unit of its service. */
    private static Unit unit(Fields fields, String path, Map<ServiceItemId, ServiceItem> items) {
        String chosen = fields.typed(path.replace("quantity", "serviceItem"));
        ServiceItem item = chosen.isEmpty() ? null : items.get(ServiceItemId.of(chosen));
        return item == null ? Unit.PIECE : item.unit();
    }

    private List<Surface> activeSurfaces(SiteId site) {
        return readSurfaces.ofSite(site).stream().filter(Surface::active).toList();
    }

    private static Map<String, String> suggested(List<Surface> surfaces, Fields fields) {
        Map<String, String> values = new HashMap<>();
        for (int row = 0; row < surfaces.size() + FREE_ROWS; row++) {
            String prefix = LINE + "-" + row + "-";
            values.put(prefix + "id", Ids.next().toString());
            if (row < surfaces.size()) {
                Surface surface = surfaces.get(row);
                values.put(prefix + "surface", surface.id().toString());
                values.put(
                        prefix + "quantity",
                        fields.notation().plain(surface.extent().value()));
                values.put(prefix + "quantityUnit", surface.extent().unit().code());
            }
        }
        return values;
    }

    private List<Said> ofQuote(Quote quote, Map<ServiceItemId, ServiceItem> items) {
        Map<SurfaceId, Surface> surfaces = surfaces(quote.site());
        return quote.lines().stream()
                .map(line -> said(line.serviceItem(), line.surface(), line.quantity(), items, surfaces))
                .toList();
    }

    private List<Said> ofReturn(Visit first, Map<ServiceItemId, ServiceItem> items) {
        Map<SurfaceId, Surface> surfaces = surfaces(first.site());
        Map<VisitLineId, Visit.Line> lines =
                first.lines().stream().collect(Collectors.toMap(Visit.Line::id, Function.identity()));
        return first.scopeChanges().stream()
                .filter(change -> change.decision() == ScopeDecision.RETURN_VISIT && lines.containsKey(change.line()))
                .map(change -> {
                    Visit.Line line = Objects.requireNonNull(lines.get(change.line()));
                    return said(line.serviceItem(), line.surface(), change.quantity(), items, surfaces);
                })
                .toList();
    }

    private Map<SurfaceId, Surface> surfaces(SiteId site) {
        return readSurfaces.ofSite(site).stream().collect(Collectors.toMap(Surface::id, Function.identity()));
    }

    private static Said said(
            ServiceItemId itemId,
            @Nullable SurfaceId surfaceId,
            Quantity quantity,
            Map<ServiceItemId, ServiceItem> items,
            Map<SurfaceId, Surface> surfaces) {
        ServiceItem item = items.get(itemId);
        Surface surface = surfaceId == null ? null : surfaces.get(surfaceId);
        return new Said(item == null ? "" : item.name(), surface == null ? "" : surface.name(), quantity);
    }

    private SchedulingPage said(Form<Scheduling> form, SiteId site, @Nullable Long quoteNumber, List<Said> said) {
        return page(form, readCustomer.site(site), quoteNumber, said, List.of(), List.of());
    }

    private SchedulingPage page(
            Form<Scheduling> form,
            Site site,
            @Nullable Long quoteNumber,
            List<Said> said,
            List<Surface> surfaces,
            List<ServiceItem> items) {
        List<User> staff = readUsers.all().stream()
                .filter(User::active)
                .sorted(Comparator.comparing((User user) -> user.role() != Role.TECHNICIAN))
                .toList();
        String customer = readCustomer.customer(site.customer()).name();
        return new SchedulingPage(form, customer, site, quoteNumber, said, staff, surfaces, items);
    }
}
