package eaveside.visits;

import eaveside.customers.ReadCustomer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Slice;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.Crews;
import eaveside.visits.internal.PageKey;
import eaveside.visits.internal.VisitQueries;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.hibernate.query.Page;
import org.jspecify.annotations.Nullable;

/** Finds visits. Lists page by key. */
@Dependent
public class ReadVisits {
    private final Visits visits;
    private final VisitQueries queries;
    private final ReadCustomer readCustomer;
    private final Crews crews;

    @Inject
    public ReadVisits(Visits visits, VisitQueries queries, ReadCustomer readCustomer, Crews crews) {
        this.visits = visits;
        this.queries = queries;
        this.readCustomer = readCustomer;
        this.crews = crews;
    }

    /** Refuses an unknown id. */
    @Transactional
    public Visit visit(VisitId id) {
        return visits.view(visits.required(id));
    }

    /** The same for whoever asks: refuses a technician outside the crew with {@link VisitRefusal.NotYours}. */
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

    /** Planned visits, the earliest first; overdue ones lead. */
    @Transactional
    public Slice<Visit.Summary> planned(@Nullable String after, int size) {
        PageKey key = PageKey.ascending(after);
        return slice(queries.scheduledAfter(VisitStatus.SCHEDULED, key.day(), key.id(), Page.first(size + 1)), size);
    }

    /** Done and neither billed nor closed, the oldest work first. */
    @Transactional
    public Slice<Visit.Summary> doneUnbilled(@Nullable String after, int size) {
        PageKey key = PageKey.ascending(after);
        return slice(queries.doneAfter(VisitStatus.COMPLETED, key.day(), key.id(), Page.first(size + 1)), size);
    }

    /** How many planned visits were to be done before the day. */
    @Transactional
    public long countScheduledBefore(LocalDate day) {
        return queries.scheduledBefore(day);
    }

    /** All that are done and neither billed nor closed, in no order: for totals. */
    @Transactional
    public List<VisitId> allDoneUnbilled() {
        return queries.idsOfDone().stream().map(VisitId::new).toList();
    }

    /** Those that were done by the day and are neither billed nor closed, in no order. */
    @Transactional
    public List<VisitId> doneUnbilledBy(LocalDate day) {
        return queries.idsOfDoneBy(day).stream().map(VisitId::new).toList();
    }

    /** All visits to a customer, the latest planned day first. */
    @Transactional
    public Slice<Visit.Summary> ofCustomer(CustomerId customer, @Nullable String after, int size) {
        PageKey key = PageKey.descending(after);
        List<VisitRow> rows = queries.ofCustomersBefore(
                readCustomer.idsOf(customer).stream().map(CustomerId::value).toList(),
                key.day(),
                key.id(),
                Page.first(size + 1));
        return Slice.of(rows, size, row -> row.plannedKey().toString()).map(VisitRow::toSummary);
    }

    private static Slice<Visit.Summary> slice(List<VisitRow> rows, int size) {
        return Slice.of(rows, size, row -> row.key().toString()).map(VisitRow::toSummary);
    }
}
