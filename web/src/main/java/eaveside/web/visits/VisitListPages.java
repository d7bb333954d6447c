package eaveside.web.visits;

import eaveside.access.Sight;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ReadBalances;
import eaveside.ledger.ReadLedger;
import eaveside.visits.ReadVisits;
import eaveside.visits.Visit;
import eaveside.visits.VisitQuery;
import eaveside.visits.VisitStatus;
import eaveside.visits.VisitsShown;
import eaveside.web.Names;
import eaveside.web.View;
import eaveside.web.forms.ListResource;
import eaveside.web.forms.Listing;
import eaveside.web.security.Roles;
import jakarta.annotation.security.RolesAllowed;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.util.HashMap;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** The list of visits: everybody's or a customer's. */
@Path("/visits")
@Dependent
@Produces(MediaType.TEXT_HTML)
@RolesAllowed({Roles.OWNER, Roles.OFFICE})
public class VisitListPages extends ListResource<Visit.Summary> {
    @Inject
    ReadVisits readVisits;

    @Inject
    ReadBalances readBalances;

    @Inject
    ReadLedger readLedger;

    @Inject
    Names names;

    @Override
    protected Listing<Visit.Summary> list() {
        View view = viewer.view();
        CustomerId customer = customer(asked.getQueryParameters().getFirst("customer"));
        Map<VisitId, Money> costs = new HashMap<>();
        Listing<Visit.Summary> list = Listing.<Visit.Summary>of("visits", "/visits", query -> read(query, costs))
                .searched()
                .kept("customer")
                .choice(
                        "show",
                        VisitsShown.class,
                        VisitQuery.asked(null, customer, "").show())
                .column("scheduledFor", Visit.Summary::date, visit -> "/visits/" + visit.id())
                .column("status", visit -> status(visit, view))
                .column("customer", visit -> names.customer(visit.customer()))
                .column("site", visit -> names.site(visit.site()))
                .column("address", visit -> names.address(visit.site()))
                .column("crew", this::crew)
                .columns("completedOn")
                .action("new", "/visits/new" + (customer == null ? "" : "?customer=" + customer));
        if (viewer.sees(Sight.COSTS)) {
            String entries = entries(readLedger);
            list.column(
                    "cost",
                    visit -> costs.get(visit.id()),
                    visit -> costs.containsKey(visit.id()) ? entries + visit.id() : null);
        }
        return list;
    }

    private static @Nullable CustomerId customer(@Nullable String id) {
        return id == null || id.isEmpty() ? null : CustomerId.of(id);
    }

    private static String status(Visit.Summary visit, View view) {
        String status = view.t("visits.status", visit.status());
        boolean overdue =
                visit.status() == VisitStatus.SCHEDULED && visit.date().isBefore(view.today());
        return overdue ? status + ", " + view.t("visits.overdue") : status;
    }

    private String crew(Visit.Summary visit) {
        return visit.crew().stream().map(names::user).sorted().collect(Collectors.joining(", "));
    }

    /** The address of what visits have in work in progress, to which the visit's id is added. */
    static String entries(ReadLedger readLedger) {
        return "/books/entries?account=" + readLedger.accountsInRoles().get(AccountRole.WORK_IN_PROGRESS) + "&visit=";
    }

    /** A page of visits with their names; what those not billed cost is put into the map. */
    private Slice<Visit.Summary> read(Listing.Query asked, Map<VisitId, Money> costs) {
        Slice<Visit.Summary> page = readVisits.list(
                VisitQuery.asked(
                        asked.chosen("show", VisitsShown.class), customer(asked.value("customer")), asked.search()),
                asked.after(),
                asked.size());
        names.lookUpVisits(page.rows());
        names.lookUpUsers(page.rows().stream().flatMap(visit -> visit.crew().stream()));
        if (viewer.sees(Sight.COSTS)) {
            costs.putAll(readBalances.ofVisits(
                    AccountRole.WORK_IN_PROGRESS,
                    page.rows().stream()
                            .filter(visit -> visit.status() == VisitStatus.COMPLETED)
                            .map(Visit.Summary::id)
                            .toList()));
        }
        return page;
    }
}
