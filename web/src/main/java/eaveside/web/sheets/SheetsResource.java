package eaveside.web.sheets;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Books;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.visits.VisitStatus;
import eaveside.web.Page;
import eaveside.web.security.Roles;
import eaveside.web.security.Viewer;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;

/** The own sheets of a day: the first page of a technician, and the only list. */
@Path("/sheets")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE, Roles.TECHNICIAN})
public class SheetsResource {
    /** How far the day can be switched to either side of today. */
    private static final int DAYS = 7;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadCustomer readCustomer;

    @Inject
    Books books;

    @Inject
    Viewer viewer;

    /** A visit of the day. */
    public record Row(VisitId id, String customer, String site, String address, VisitStatus status) {}

    /** The sheets of a day, and whether there is a day to switch to on either side. */
    public record SheetsPage(LocalDate day, boolean hasBefore, boolean hasAfter, List<Row> rows, String signer)
            implements Page {
        @Override
        public String template() {
            return "sheets/sheets.jte";
        }
    }

    @GET
    @Transactional
    public SheetsPage sheets(@QueryParam("day") @DefaultValue("") String asked) {
        LocalDate today = books.today();
        LocalDate first = today.minusDays(DAYS);
        LocalDate last = today.plusDays(DAYS);
        LocalDate day = day(asked, today);
        day = day.isBefore(first) ? first : day.isAfter(last) ? last : day;
        List<Visit.Summary> visits = readVisits.sheetsOf(viewer.id(), day);
        Map<CustomerId, Customer> customers = readCustomer.customers(
                visits.stream().map(Visit.Summary::customer).distinct().toList());
        Map<SiteId, Site> sites = readCustomer.sites(
                visits.stream().map(Visit.Summary::site).distinct().toList());
        return new SheetsPage(
                day,
                day.isAfter(first),
                day.isBefore(last),
                visits.stream().map(v -> row(v, customers, sites)).toList(),
                viewer.id().toString());
    }

    private static LocalDate day(String text, LocalDate otherwise) {
        try {
            return text.isEmpty() ? otherwise : LocalDate.parse(text);
        } catch (DateTimeException e) {
            return otherwise;
        }
    }

    private static Row row(Visit.Summary visit, Map<CustomerId, Customer> customers, Map<SiteId, Site> sites) {
        Customer customer = customers.get(visit.customer());
        Site site = sites.get(visit.site());
        return new Row(
                visit.id(),
                customer == null ? "" : customer.name(),
                site == null ? "" : site.name(),
                site == null ? "" : site.address().oneLine(),
                visit.status());
    }
}
