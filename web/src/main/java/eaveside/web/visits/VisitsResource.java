package eaveside.web.visits;

import eaveside.access.Role;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.web.Csv;
import eaveside.web.Names;
import eaveside.web.Page;
import eaveside.web.security.For;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.ws.rs.DefaultValue;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Visits: planned ones, done ones that wait for their invoice, or all of a customer. */
@Path("/visits")
@Dependent
@Produces(MediaType.TEXT_HTML)
@For({Role.OWNER, Role.OFFICE})
public class VisitsResource {
    private static final int PAGE = 50;
    private static final int EXPORT = 2_000;

    private final ReadVisits readVisits;
    private final Names names;

    @Inject
    public VisitsResource(ReadVisits readVisits, Names names) {
        this.readVisits = readVisits;
        this.names = names;
    }

    /** @param show {@code planned} or {@code done}, where no customer is asked for */
    public record VisitsPage(String show, String customer, Slice<Visit.Summary> visits, Names names) implements Page {
        @Override
        public String template() {
            return "visits/visits.jte";
        }

        public String query() {
            return customer.isEmpty() ? "show=" + show : "customer=" + customer;
        }
    }

    @GET
    @Transactional
    public VisitsPage visits(
            @QueryParam("show") @DefaultValue("planned") String show,
            @QueryParam("customer") @DefaultValue("") String customer,
            @QueryParam("after") @Nullable String after) {
        return new VisitsPage(show, customer, read(show, customer, after, PAGE), names);
    }

    private Slice<Visit.Summary> read(String show, String customer, @Nullable String after, int size) {
        if (!customer.isEmpty()) {
            return readVisits.ofCustomer(CustomerId.of(customer), after, size);
        }
        return show.equals("done") ? readVisits.doneUnbilled(after, size) : readVisits.planned(after, size);
    }

    @GET
    @Path("list.csv")
    @Produces("text/csv")
    @Transactional
    public Response csv(
            @QueryParam("show") @DefaultValue("planned") String show,
            @QueryParam("customer") @DefaultValue("") String customer) {
        return Csv.download(
                "visits",
                List.of("date", "done on", "customer", "crew", "status"),
                read(show, customer, null, EXPORT).rows().stream()
                        .map(v -> List.of(
                                v.date().toString(),
                                v.doneOn() == null ? "" : v.doneOn().toString(),
                                names.customer(v.customer()),
                                names.users(v.crew()),
                                v.status().name()))
                        .toList());
    }
}
