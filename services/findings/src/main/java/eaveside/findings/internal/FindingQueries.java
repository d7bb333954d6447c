package eaveside.findings.internal;

import eaveside.findings.FindingLine;
import eaveside.findings.FindingTypeCode;
import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.VisitId;
import jakarta.persistence.EntityManager;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;

/** Queries over the findings; the annotation processor checks them when it compiles. */
public interface FindingQueries {
    /** Types look at one another's names, so saving them takes turns. */
    long TYPES = 0x66696e64696e67L;

    EntityManager entityManager();

    /** Waits for others under the key; holds it until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(:key) as text)")
    String takeTurn(long key);

    /** Waits for others under the same id; holds the turn until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(hashtextextended(:id, 0)) as text)")
    String takeTurnOf(String id);

    @HQL("select f, k.name, s, (select count(*) from FindingPhotoRow p where p.key.findingId = f.id), "
            + "(select count(*) from FindingActionRow a where a.findingId = f.id) "
            + "from FindingRow f join FindingTypeRow k on k.code = f.findingTypeCode join SeverityRow s on s.code = f.severityCode "
            + "where f.closedAt is null and f.withdrawnAt is null and (f.openedAt, f.id) > (:since, :id) "
            + "order by f.openedAt, f.id fetch first :most rows only")
    List<ListedLine> open(Instant since, UUID id, int most);

    @HQL("select f, k.name, s, (select count(*) from FindingPhotoRow p where p.key.findingId = f.id), "
            + "(select count(*) from FindingActionRow a where a.findingId = f.id) "
            + "from FindingRow f join FindingTypeRow k on k.code = f.findingTypeCode join SeverityRow s on s.code = f.severityCode "
            + "where f.customerId in :customers and f.withdrawnAt is null and (case when f.closedAt is null then true else false end) = :open "
            + "and (f.openedAt, f.id) > (:since, :id) order by f.openedAt, f.id fetch first :most rows only")
    List<ListedLine> ofCustomers(Collection<CustomerId> customers, boolean open, Instant since, UUID id, int most);

    @HQL("select f, k.name, s, (select count(*) from FindingPhotoRow p where p.key.findingId = f.id), "
            + "(select count(*) from FindingActionRow a where a.findingId = f.id) "
            + "from FindingRow f join FindingTypeRow k on k.code = f.findingTypeCode join SeverityRow s on s.code = f.severityCode "
            + "where f.closedAt is not null and f.withdrawnAt is null and (f.openedAt, f.id) < (:before, :id) "
            + "order by f.openedAt desc, f.id desc fetch first :most rows only")
    List<ListedLine> closed(Instant before, UUID id, int most);

    @HQL("from FindingRow where visitId = :visit order by openedAt, id")
    List<FindingRow> ofVisit(VisitId visit);

    @HQL("from FindingRow where visitId = :visit and withdrawnAt is null order by id")
    List<FindingRow> standingOfVisit(VisitId visit);

    @HQL("from FindingRow where customerId in :customers order by openedAt desc, id desc fetch first :most rows only")
    List<FindingRow> ofCustomers(Collection<CustomerId> customers, int most);

    @HQL("select f.key.findingId, p from FindingPhotoRow f join PhotoRow p on p.id = f.key.photoId "
            + "where f.key.findingId in (:findings) order by f.key.findingId, f.position")
    List<Shown> photosOf(List<UUID> findings);

    @HQL("from FindingActionRow where findingId in (:findings) order by givenAt, id")
    List<FindingActionRow> actionsTo(List<FindingId> findings);

    @HQL("from PhotoRow where visitId = :visit order by storedAt, id")
    List<PhotoRow> photosOfVisit(VisitId visit);

    @HQL("from FindingTypeRow order by name")
    List<FindingTypeRow> types();

    @HQL("select count(*) from FindingTypeRow where lower(name) = lower(:name) and code <> :code")
    long otherTypesNamed(String name, String code);

    @HQL("from SeverityRow order by rank")
    List<SeverityRow> severities();

    /** A photo with the finding that shows it. */
    record Shown(UUID finding, PhotoRow photo) {}

    /** A finding with what a list says about it. */
    record ListedLine(FindingRow finding, String typeName, SeverityRow severity, Long photos, Long actions) {
        public FindingLine toLine() {
            return new FindingLine(
                    new FindingId(finding.id),
                    new FindingTypeCode(finding.findingTypeCode),
                    typeName,
                    severity.toSeverity(),
                    finding.visitId,
                    finding.customerId,
                    finding.siteId,
                    finding.note,
                    finding.customerNotified,
                    finding.openedAt,
                    photos.intValue(),
                    actions.intValue(),
                    finding.status());
        }
    }
}
