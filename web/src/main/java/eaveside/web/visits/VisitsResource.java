package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.access.Role;
import eaveside.access.Sight;
import eaveside.access.User;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.Books;
import eaveside.ledger.ReadLedger;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.View;
import eaveside.web.security.For;
import eaveside.web.security.Viewer;
import eaveside.web.visits.VisitRows.Row;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.UriInfo;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** The list of visits: planned, of one day, done and unbilled, or all of a customer. */
@Path("/visits")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class VisitsResource {
    private static final int PAGE = 50;
    /** How many visits a search looks through, and an export holds. */
    private static final int MOST = 2_000;

    private final ReadVisits readVisits;
    private final ReadUsers readUsers;
    private final VisitRows visitRows;
    private final ReadLedger readLedger;
    private final Books books;
    private final Names names;
    private final Viewer viewer;

    @Context
    UriInfo uri;

    @Inject
    public VisitsResource(
            ReadVisits readVisits,
            ReadUsers readUsers,
            VisitRows visitRows,
            ReadLedger readLedger,
            Books books,
            Names names,
            Viewer viewer) {
        this.readVisits = readVisits;
        this.readUsers = readUsers;
        this.visitRows = visitRows;
        this.readLedger = readLedger;
        this.books = books;
        this.names = names;
        this.viewer = viewer;
    }

    /** Which visits are shown. */
    public enum Show {
        SCHEDULED,
        TODAY,
        COMPLETED,
        CUSTOMER
    }

    /**
     * The list.
     *
     * @param  customer whose visits are shown; empty where everybody's are
     * @param  q        words that the customer, site, address or crew must have
     * @param  more     address of the next page
     */
    public record VisitsPage(
            Show show,
            String customer,
            String q,
            List<Row> rows,
            @Nullable String more,
            String csv,
            AccountCode workInProgress)
            implements Page {
        @Override
        public String template() {
            return "visits/visits.jte";
        }

        /** The entries behind what a visit has cost so far. */
        public String costOf(Row row) {
            return Entries.of(workInProgress, row.id());
        }
    }

    @GET
    @Transactional
    public VisitsPage visits(
            @QueryParam("show") @DefaultValue("planned") String show,
            @QueryParam("customer") @DefaultValue("") String customer,
            @QueryParam("q") @DefaultValue("") String q,
            @QueryParam("after") @Nullable String after) {
        Show shown = shown(show, customer);
        Slice<Row> rows = rows(shown, customer, q.strip(), after, PAGE);
        return new VisitsPage(
                shown,
                customer.isEmpty() ? "" : names.customer(CustomerId.of(customer)),
                q,
                rows.rows(),
                rows.next() == null
                        ? null
                        : uri.getRequestUriBuilder()
                                .replaceQueryParam("after", rows.next())
                                .build()
                                .toString(),
                uri.getRequestUriBuilder()
                        .replaceQueryParam("after")
                        .path("list.csv")
                        .build()
                        .toString(),
                Entries.workInProgress(readLedger));
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(
            @QueryParam("show") @DefaultValue("planned") String show,
            @QueryParam("customer") @DefaultValue("") String customer,
            @QueryParam("q") @DefaultValue("") String q) {
        View view = viewer.view();
        List<String> header =
                new ArrayList<>(List.of("planned for", "done on", "state", "customer", "site", "address", "crew"));
        if (view.seesCosts()) {
            header.add("cost so far");
        }
        return Csv.download(
                "visits",
                header,
                rows(shown(show, customer), customer, q.strip(), null, MOST).rows().stream()
                        .map(row -> Stream.of(
                                        row.date().toString(),
                                        row.completedOn() == null
                                                ? ""
                                                : row.completedOn().toString(),
                                        view.t("visits.status", row.status()),
                                        row.customer(),
                                        row.site(),
                                        row.address(),
                                        row.crew(),
                                        row.cost() == null
                                                ? ""
                                                : row.cost().amount().toPlainString())
                                .limit(header.size())
                                .toList())
                        .toList());
    }

    private static Show shown(String show, String customer) {
        if (!customer.isEmpty()) {
            return Show.CUSTOMER;
        }
        return switch (show) {
            case "today" -> Show.TODAY;
            case "done" -> Show.COMPLETED;
            default -> Show.SCHEDULED;
        };
    }

    private Slice<Row> rows(Show show, String customer, String q, @Nullable String after, int size) {
        if (q.isEmpty()) {
            Slice<Visit.Summary> slice = read(show, customer, after, size);
            return new Slice<>(visitRows.of(slice.rows(), viewer.sees(Sight.COSTS)), slice.next());
        }
        List<Row> found = visitRows.of(read(show, customer, null, MOST).rows(), viewer.sees(Sight.COSTS)).stream()
                .filter(row -> row.says(q))
                .toList();
        return new Slice<>(found, null);
    }

    private Slice<Visit.Summary> read(Show show, String customer, @Nullable String after, int size) {
        return switch (show) {
            case SCHEDULED -> readVisits.planned(after, size);
            case COMPLETED -> readVisits.doneUnbilled(after, size);
            case TODAY -> new Slice<>(ofDay(books.today()), null);
            case CUSTOMER -> readVisits.ofCustomer(CustomerId.of(customer), after, size);
        };
    }

    /** Every crew's visits of the day; a visit with a crew of three is one visit. */
    private List<Visit.Summary> ofDay(LocalDate day) {
        Map<Object, Visit.Summary> byId = readUsers.all().stream()
                .filter(User::active)
                .flatMap(user -> readVisits.sheetsOf(user.id(), day).stream())
                .collect(Collectors.toMap(Visit.Summary::id, visit -> visit, (one, same) -> one));
        return byId.values().stream()
                .sorted(Comparator.comparing(visit -> visit.id().value()))
                .toList();
    }
}
