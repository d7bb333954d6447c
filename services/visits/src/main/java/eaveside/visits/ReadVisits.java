package eaveside.visits;

import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.Crews;
import eaveside.visits.internal.VisitList;
import eaveside.visits.internal.VisitQueries;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import org.hibernate.query.Page;
import org.jspecify.annotations.Nullable;

/** Finds visits. Lists page by key. */
@Shared
public class ReadVisits {
    private final Visits visits;
    private final VisitQueries queries;
    private final VisitList list;
    private final Crews crews;
    private final ReadCustomer readCustomer;

    @Inject
    public ReadVisits(Visits visits, VisitQueries queries, VisitList list, Crews crews, ReadCustomer readCustomer) {
        this.visits = visits;
        this.queries = queries;
        this.list = list;
        this.crews = crews;
        this.readCustomer = readCustomer;
    }

    /** Refuses an unknown id. */
    @Transactional
    public Visit visit(VisitId id) {
        return visits.view(visits.required(id));
    }

    /** The quote that the visit carries out; null where it carries out none. Refuses an unknown id. */
    @Transactional
    public @Nullable QuoteId quoteOf(VisitId id) {
        return visits.required(id).quote();
    }

    /** The same as {@link #visit} for whoever asks: refuses a technician outside the crew with {@link VisitRefusal.NotYours}. */
    @Transactional
    public Visit visitFor(UserId reader, VisitId id) {
        VisitRow row = visits.required(id);
        crews.requireOwn(reader, row);
        return visits.view(row);
    }

    /** A technician's own visits of a day, done ones too, without canceled ones. */
    @Transactional
    public List<Visit.Summary> sheetsOf(UserId technician, LocalDate day) {
        return queries.ofCrewMember(technician.value(), day).stream()
                .map(VisitRow::toSummary)
                .toList();
    }

    /** A page of the list; refuses a key that no page gave out. */
    @Transactional
    public Slice<Visit.Summary> list(VisitQuery query, @Nullable String after, int size) {
        return list.list(query, after, size);
    }

    /** How many scheduled visits were to be done before the day. */
    @Transactional
    public long countScheduledBefore(LocalDate day) {
        return queries.scheduledBefore(day);
    }

    /** The newest visits of a few customers, for a search; canceled ones aside. */
    @Transactional
    public List<Visit.Summary> newestOf(Collection<CustomerId> customers, int most) {
        return customers.isEmpty()
                ? List.of()
                : queries.newestOf(readCustomer.idsOf(customers), Page.first(most)).stream()
                        .map(VisitRow::toSummary)
                        .toList();
    }

    /**
     * Labor of the visits completed in a span of days.
     *
     * @param  paid   all minutes on their job sheets: on site, driving and loading
     * @param  billed minutes on site of those that are billed
     */
    public record LaborMinutes(long paid, long billed) {}

    @Transactional
    public LaborMinutes labor(LocalDate from, LocalDate to) {
        VisitQueries.Labor labor = queries.labor(from, to);
        return new LaborMinutes(labor.paid(), labor.billed());
    }

    /** The customer's visit that was completed last and the one that is scheduled first; null where there is none. */
    public record LastAndNext(Visit.@Nullable Summary last, Visit.@Nullable Summary next) {}

    @Transactional
    public LastAndNext lastAndNext(CustomerId customer) {
        List<CustomerId> ids = readCustomer.idsOf(customer);
        return new LastAndNext(
                queries.lastOf(ids).stream()
                        .map(VisitRow::toSummary)
                        .findFirst()
                        .orElse(null),
                queries.nextOf(ids).stream()
                        .map(VisitRow::toSummary)
                        .findFirst()
                        .orElse(null));
    }

    /** All that are completed and not billed, in no order: for totals. */
    @Transactional
    public List<VisitId> allCompletedNotBilled() {
        return queries.idsOfCompleted().stream().map(VisitId::new).toList();
    }

    /** Those completed by the day and not billed, in no order. */
    @Transactional
    public List<VisitId> completedNotBilledBy(LocalDate day) {
        return queries.idsOfCompletedBy(day).stream().map(VisitId::new).toList();
    }
}
