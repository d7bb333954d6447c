package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.catalog.Catalog;
import eaveside.catalog.ServiceItem;
import eaveside.customers.CustomerLine;
import eaveside.customers.FindCustomers;
import eaveside.customers.ReadCustomer;
import eaveside.customers.ReadSurfaces;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Ids;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.pricing.Quote;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadVisits;
import eaveside.visits.ScheduleVisit;
import eaveside.visits.Scheduling;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.forms.Fields;
import eaveside.web.forms.Form;
import eaveside.web.forms.Respond;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import eaveside.web.visits.SchedulingPage.Said;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** Scheduling a visit: from an accepted quote, to return for skipped work, or with work of its own at a site. */
@Path("/visits/new")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class SchedulingPages {
    private static final int FOUND = 20;

    /** Rows beyond those of the site's surfaces. */
    private static final int FREE_ROWS = 2;

    @Inject
    ScheduleVisit scheduleVisit;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadVisits readVisits;

    @Inject
    FindCustomers findCustomers;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadSurfaces readSurfaces;

    @Inject
    ReadUsers readUsers;

    @Inject
    Catalog catalog;

    @Inject
    Books books;

    @Inject
    Names names;

    @Inject
    Viewer viewer;

    /** The first step without a quote: which customer, and which site. */
    public record CustomerChoicePage(String q, List<CustomerLine> customers, List<Site> sites) implements Page {}

    @GET
    @Transactional
    public Page form(
            @QueryParam("quote") @Nullable QuoteId quote,
            @QueryParam("return") @Nullable VisitId returnsTo,
            @QueryParam("site") @Nullable SiteId at,
            @QueryParam("customer") @Nullable CustomerId customer,
            @QueryParam("q") @DefaultValue("") String q) {
        SiteId site = at == null && customer != null && quote == null && returnsTo == null ? onlySite(customer) : at;
        if (quote == null && returnsTo == null && site == null) {
            return chooseCustomer(customer, q);
        }
        Map<String, String> values = new HashMap<>();
        values.put("id", VisitId.next().toString());
        values.put("date", books.today().plusDays(1).toString());
        values.put("quote", Objects.toString(quote, ""));
        values.put("returnsTo", Objects.toString(returnsTo, ""));
        values.put("site", Objects.toString(site, ""));
        if (site != null) {
            suggest(activeSurfaces(site), values);
        }
        return page(viewer.form(Scheduling.class, values).fields());
    }

    private CustomerChoicePage chooseCustomer(@Nullable CustomerId customer, String q) {
        return customer == null
                ? new CustomerChoicePage(
                        q, findCustomers.find(q, true, null, FOUND).rows(), List.of())
                : new CustomerChoicePage(q, List.of(), activeSites(customer));
    }

    private List<Site> activeSites(CustomerId customer) {
        return readCustomer.sites(customer).stream().filter(Site::active).toList();
    }

    /** Where there is only one, it need not be chosen. */
    private @Nullable SiteId onlySite(CustomerId customer) {
        List<Site> sites = activeSites(customer);
        return sites.size() == 1 ? sites.getFirst().id() : null;
    }

    /** Work to fill in: each surface suggests all of itself. */
    private void suggest(List<Surface> surfaces, Map<String, String> values) {
        for (int row = 0; row < surfaces.size() + FREE_ROWS; row++) {
            String prefix = "line-" + row + "-";
            values.put(prefix + "id", Ids.next().toString());
            if (row < surfaces.size()) {
                Surface surface = surfaces.get(row);
                values.put(prefix + "surface", surface.id().toString());
                values.put(
                        prefix + "quantity",
                        viewer.notation().plain(surface.extent().value()));
                values.put(prefix + "quantityUnit", surface.extent().unit().code());
            }
        }
    }

    @POST
    @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
    public Response schedule(Fields fields) {
        SchedulingPage page = page(fields);
        return page.form().given("by", viewer.id()).run(scheduleVisit::schedule)
                ? Respond.to("/visits/" + fields.typed("id"), "visits.scheduled")
                : Respond.again(page.form().fields(), page);
    }

    /** The form that was sent, or is shown first. A row counts once a service is chosen in it. */
    private SchedulingPage page(Fields fields) {
        List<ServiceItem> items = catalog.serviceItems();
        Form<Scheduling> form = Form.sent(Scheduling.class, fields)
                .labeled("visits")
                .ignoring(SchedulingPage.prefixes(fields)
                        .filter(prefix -> fields.typed(prefix + "serviceItem").isEmpty())
                        .flatMap(prefix -> Stream.of("surface", "quantity").map(prefix::concat))
                        .toList())
                .in(path -> unit(fields.typed(path.replace("quantity", "serviceItem")), items));
        if (!fields.typed("quote").isEmpty()) {
            Quote quote = readQuotes.quote(QuoteId.of(fields.typed("quote")));
            List<Said> said = quote.lines().stream()
                    .map(line -> new Said(line.serviceItem(), line.surface(), line.quantity()))
                    .toList();
            return page(form, quote.site(), quote.number(), said, List.of(), List.of());
        }
        if (!fields.typed("returnsTo").isEmpty()) {
            Visit first = readVisits.visit(VisitId.of(fields.typed("returnsTo")));
            return page(form, first.site(), null, skipped(first), List.of(), List.of());
        }
        SiteId site = SiteId.of(fields.typed("site"));
        List<ServiceItem> sold = items.stream().filter(ServiceItem::active).toList();
        return page(form, site, null, List.of(), activeSurfaces(site), sold);
    }

    private SchedulingPage page(
            Form<Scheduling> form,
            SiteId site,
            @Nullable Long quoteNumber,
            List<Said> said,
            List<Surface> surfaces,
            List<ServiceItem> items) {
        if (!said.isEmpty()) {
            names.lookUpWork(site);
        }
        return new SchedulingPage(
                form,
                readCustomer.site(site),
                quoteNumber,
                said,
                VisitResource.staff(readUsers, List.of()),
                surfaces,
                items,
                names);
    }

    /** What a quantity is typed in where its row does not say so: the unit of its service. */
    private static Unit unit(String chosen, List<ServiceItem> items) {
        return items.stream()
                .filter(item -> item.id().toString().equalsIgnoreCase(chosen))
                .map(ServiceItem::unit)
                .findFirst()
                .orElse(Unit.PIECE);
    }

    private List<Surface> activeSurfaces(SiteId site) {
        return readSurfaces.ofSite(site).stream().filter(Surface::active).toList();
    }

    private static List<Said> skipped(Visit first) {
        return first.scopeChanges().stream()
                .filter(change -> change.decision() == ScopeDecision.RETURN_VISIT)
                .flatMap(change -> first.lines().stream()
                        .filter(line -> line.id().equals(change.line()))
                        .map(line -> new Said(line.serviceItem(), line.surface(), change.quantity())))
                .toList();
    }
}
