package eaveside.web.visits;

import eaveside.access.ReadUsers;
import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.customers.Site;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.ReadBalances;
import eaveside.visits.Visit;
import eaveside.visits.VisitStatus;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Gives visits of a list the names that people know them by; a fixed number of queries, however long the list. */
@Dependent
public class VisitRows {
    @Inject
    ReadCustomer readCustomer;

    @Inject
    ReadUsers readUsers;

    @Inject
    ReadBalances readBalances;

    /**
     * A visit in a list.
     *
     * @param  cost in work in progress; null where there is none, and for who may not see it
     */
    public record Row(
            VisitId id,
            CustomerId customerId,
            String customer,
            String site,
            String address,
            LocalDate date,
            @Nullable LocalDate completedOn,
            String crew,
            VisitStatus status,
            @Nullable Money cost) {}

    List<Row> of(List<Visit.Summary> visits, boolean withCost) {
        Map<CustomerId, Customer> customers = readCustomer.customers(
                visits.stream().map(Visit.Summary::customer).distinct().toList());
        Map<SiteId, Site> sites = readCustomer.sites(
                visits.stream().map(Visit.Summary::site).distinct().toList());
        Map<UserId, String> crew = readUsers.namesOf(
                visits.stream().flatMap(v -> v.crew().stream()).distinct().toList());
        Map<VisitId, Money> cost = readBalances.ofVisits(
                AccountRole.WORK_IN_PROGRESS,
                visits.stream()
                        .filter(v -> withCost && v.status() == VisitStatus.COMPLETED)
                        .map(Visit.Summary::id)
                        .toList());
        return visits.stream().map(v -> row(v, customers, sites, crew, cost)).toList();
    }

    private static Row row(
            Visit.Summary visit,
            Map<CustomerId, Customer> customers,
            Map<SiteId, Site> sites,
            Map<UserId, String> crew,
            Map<VisitId, Money> cost) {
        Customer customer = customers.get(visit.customer());
        Site site = sites.get(visit.site());
        return new Row(
                visit.id(),
                visit.customer(),
                customer == null ? "" : customer.name(),
                site == null ? "" : site.name(),
                site == null ? "" : site.address().oneLine(),
                visit.date(),
                visit.completedOn(),
                visit.crew().stream()
                        .map(id -> crew.getOrDefault(id, ""))
                        .sorted()
                        .collect(Collectors.joining(", ")),
                visit.status(),
                cost.get(visit.id()));
    }
}
