package eaveside.web.visits;

import eaveside.access.Sight;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.ledger.AccountCode;
import eaveside.ledger.ReadLedger;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.visits.VisitQuery;
import eaveside.visits.VisitStatus;
import eaveside.visits.VisitsShown;
import eaveside.web.View;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import eaveside.web.visits.VisitRows.Row;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.jspecify.annotations.Nullable;

/** The list of visits: everybody's or a customer's. */
@Path("/visits")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class VisitListPages extends ListResource<Row> {
    @Inject
    ReadVisits readVisits;

    @Inject
    VisitRows visitRows;

    @Inject
    ReadLedger readLedger;

    @Override
    protected Listing<Row> list() {
        View view = viewer.view();
        CustomerId customer = customer(asked.getQueryParameters().getFirst("customer"));
        Listing<Row> list = Listing.of("visits", "/visits", this::read)
                .searched()
                .kept("customer")
                .choice(
                        "show",
                        VisitsShown.class,
                        VisitQuery.asked(null, customer, "").show())
                .column("scheduledFor", Row::date, row -> "/visits/" + row.id())
                .column("status", row -> status(row, view))
                .columns("customer", "site", "address", "crew", "completedOn")
                .action("new", "/visits/new" + (customer == null ? "" : "?customer=" + customer));
        if (viewer.sees(Sight.COSTS)) {
            AccountCode workInProgress = Entries.workInProgress(readLedger);
            list.column("cost", Row::cost, row -> row.cost() == null ? null : Entries.of(workInProgress, row.id()));
        }
        return list;
    }

    private static @Nullable CustomerId customer(@Nullable String id) {
        return id == null || id.isEmpty() ? null : CustomerId.of(id);
    }

    private static String status(Row row, View view) {
        String status = view.t("visits.status", row.status());
        boolean overdue = row.status() == VisitStatus.SCHEDULED && row.date().isBefore(view.today());
        return overdue ? status + ", " + view.t("visits.overdue") : status;
    }

    private Slice<Row> read(Listing.Query asked) {
        Slice<Visit.Summary> page = readVisits.list(
                VisitQuery.asked(
                        asked.chosen("show", VisitsShown.class), customer(asked.value("customer")), asked.search()),
                asked.after(),
                asked.size());
        return new Slice<>(visitRows.of(page.rows(), viewer.sees(Sight.COSTS)), page.next());
    }
}
