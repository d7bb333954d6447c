package eaveside.findings;

import eaveside.customers.ReadCustomer;
import eaveside.findings.internal.FindingActionRow;
import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.FindingRow;
import eaveside.findings.internal.FindingTypeRow;
import eaveside.findings.internal.SeverityRow;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.PageKey;
import eaveside.kernel.Shared;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Shows findings; never loads picture data. */
@Shared
public class ReadFindings {
    private final EntityManager entities;
    private final FindingQueries queries;
    private final ReadCustomer readCustomer;

    @Inject
    public ReadFindings(EntityManager entities, FindingQueries queries, ReadCustomer readCustomer) {
        this.entities = entities;
        this.queries = queries;
        this.readCustomer = readCustomer;
    }

    /** Open findings, the oldest first, paged by key. */
    @Transactional
    public Slice<FindingLine> open(@Nullable String after, int size) {
        PageKey<Instant> key = PageKey.afterMoment(after);
        return slice(queries.open(key.sort(), key.id(), size + 1), size);
    }

    /** Closed findings, the newest first, paged by key. */
    @Transactional
    public Slice<FindingLine> closed(@Nullable String after, int size) {
        PageKey<Instant> key = PageKey.beforeMoment(after);
        return slice(queries.closed(key.sort(), key.id(), size + 1), size);
    }

    /** Open or closed findings at these customers, the oldest first, paged by key. */
    @Transactional
    public Slice<FindingLine> ofCustomers(
            Collection<CustomerId> customers, boolean open, @Nullable String after, int size) {
        if (customers.isEmpty()) {
            return new Slice<>(List.of(), null);
        }
        PageKey<Instant> key = PageKey.afterMoment(after);
        Collection<CustomerId> ids = readCustomer.idsOf(customers);
        return slice(queries.ofCustomers(ids, open, key.sort(), key.id(), size + 1), size);
    }

    private static Slice<FindingLine> slice(List<FindingQueries.ListedLine> rows, int size) {
        List<FindingLine> read =
                rows.stream().map(FindingQueries.ListedLine::toLine).toList();
        return Slice.of(
                read, size, line -> new PageKey<>(line.openedAt(), line.id().value()).toString());
    }

    /** Refuses an unknown id with {@link KernelRefusal.NotFound}. */
    @Transactional
    public FindingView finding(FindingId id) {
        FindingRow row = entities.find(FindingRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("finding", id);
        }
        return views(List.of(row)).getFirst();
    }

    /** The findings of a visit, withdrawn ones too, the oldest first. */
    @Transactional
    public List<FindingView> ofVisit(VisitId visit) {
        return views(queries.ofVisit(visit));
    }

    /** The customer's newest findings, withdrawn ones too. */
    @Transactional
    public List<FindingView> ofCustomer(CustomerId customer, int most) {
        return views(queries.ofCustomers(readCustomer.idsOf(customer), most));
    }

    /** Every type by name, retired ones too. */
    @Transactional
    public List<FindingType> types() {
        return queries.types().stream().map(FindingTypeRow::content).toList();
    }

    /** Refuses an unknown code. */
    @Transactional
    public FindingType type(FindingTypeCode code) {
        return types().stream()
                .filter(type -> type.code().equals(code))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("finding type", code));
    }

    /** Every severity, the least severe first. */
    @Transactional
    public List<Severity> severities() {
        return queries.severities().stream().map(SeverityRow::toSeverity).toList();
    }

    private List<FindingView> views(List<FindingRow> rows) {
        if (rows.isEmpty()) {
            return List.of();
        }
        List<UUID> ids = rows.stream().map(row -> row.id().value()).toList();
        Map<UUID, List<FindingQueries.Shown>> photos =
                queries.photosOf(ids).stream().collect(Collectors.groupingBy(FindingQueries.Shown::finding));
        Map<FindingId, List<FindingActionRow>> actions =
                queries.actionsTo(rows.stream().map(FindingRow::id).toList()).stream()
                        .collect(Collectors.groupingBy(FindingActionRow::finding));
        return rows.stream()
                .map(row -> row.toView(
                        entities.find(FindingTypeRow.class, row.findingTypeCode())
                                .content(),
                        entities.getReference(SeverityRow.class, row.severityCode())
                                .toSeverity(),
                        photos.getOrDefault(row.id().value(), List.of()).stream()
                                .map(shown -> shown.photo().toPhoto())
                                .toList(),
                        actions.getOrDefault(row.id(), List.of()).stream()
                                .map(FindingActionRow::toAction)
                                .toList()))
                .toList();
    }
}
