package eaveside.findings;

import eaveside.findings.internal.AnswerRow;
import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.FindingRow;
import eaveside.findings.internal.KindRow;
import eaveside.findings.internal.SeverityRow;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Ids;
import eaveside.kernel.Slice;
import eaveside.kernel.VisitId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import java.util.UUID;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Shows findings; never loads picture data. */
@Dependent
public class ReadFindings {
    private final EntityManager entities;
    private final FindingQueries queries;

    @Inject
    public ReadFindings(EntityManager entities, FindingQueries queries) {
        this.entities = entities;
        this.queries = queries;
    }

    /** Open findings, the oldest first, paged by key. */
    @Transactional
    public Slice<OpenFindingLine> open(@Nullable String after, int size) {
        Instant since = Instant.EPOCH;
        UUID id = new UUID(0, 0);
        if (after != null) {
            String[] key = after.split("_", 2);
            since = Instant.parse(key[0]);
            id = Ids.parse(key[1]);
        }
        List<OpenFindingLine> read = queries.open(since, id, size + 1).stream()
                .map(FindingQueries.OpenLine::toLine)
                .toList();
        return Slice.of(read, size, line -> line.openedAt() + "_" + line.id());
    }

    @Transactional
    public long countOpen() {
        return queries.countOpen();
    }

    /** Refuses an unknown id with {@link FindingRefusal.NoSuchFinding}. */
    @Transactional
    public FindingView finding(FindingId id) {
        FindingRow row = entities.find(FindingRow.class, id.value());
        if (row == null) {
            throw new FindingRefusal.NoSuchFinding(id.toString());
        }
        return views(List.of(row)).getFirst();
    }

    /** The findings of a visit, withdrawn ones too, the oldest first. */
    @Transactional
    public List<FindingView> ofVisit(VisitId visit) {
        return views(queries.ofVisit(visit.value()));
    }

    /** The customer's newest findings, withdrawn ones too. */
    @Transactional
    public List<FindingView> ofCustomer(CustomerId customer, int most) {
        return views(queries.ofCustomer(customer.value(), most));
    }

    /** Every kind by name, retired ones too. */
    @Transactional
    public List<FindingKind> kinds() {
        return queries.kinds().stream().map(KindRow::toKind).toList();
    }

    /** Every severity, the least pressing first. */
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
        Map<UUID, List<AnswerRow>> answers =
                queries.answersTo(ids).stream().collect(Collectors.groupingBy(AnswerRow::finding));
        return rows.stream()
                .map(row -> row.toView(
                        entities.getReference(KindRow.class, row.kindCode()).toKind(),
                        entities.getReference(SeverityRow.class, row.severityCode())
                                .toSeverity(),
                        photos.getOrDefault(row.id().value(), List.of()).stream()
                                .map(shown -> shown.photo().toPhoto())
                                .toList(),
                        answers.getOrDefault(row.id().value(), List.of()).stream()
                                .map(AnswerRow::toGiven)
                                .toList()))
                .toList();
    }
}
