package eaveside.visits.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.QuoteId;
import eaveside.kernel.ScopeChangeId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;
import org.hibernate.query.Page;

/** Queries over the visits; the annotation processor checks them when it compiles. */
public interface VisitQueries {
    /** Turns of everybody who schedules a visit: "visits" in hexadecimal. */
    long SCHEDULING = 0x7669_7369_7473L;

    EntityManager entityManager();

    /** Waits for others under the key; holds it until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(:key) as text)")
    String takeTurn(long key);

    @HQL("from VisitLineRow where visitId = :visit and sheetId is null order by position")
    List<VisitLineRow> plannedLines(VisitId visit);

    @HQL("from VisitLineRow where sheetId = :sheet order by position")
    List<VisitLineRow> extraLines(DocumentId sheet);

    @HQL("from ScopeChangeRow where sheetId = :sheet order by position")
    List<ScopeChangeRow> scopeChanges(DocumentId sheet);

    @HQL("from VisitRow where quoteId = :quote and returnsTo is null and status <> CANCELED")
    List<VisitRow> scheduledFor(QuoteId quote);

    @HQL("select v from VisitRow v join v.crew c where c = :user and v.scheduledFor = :day and v.status <> CANCELED "
            + "order by v.id")
    List<VisitRow> ofCrewMember(UUID user, LocalDate day);

    @HQL("from VisitRow where customerId in :customers and status <> CANCELED order by scheduledFor desc, id desc")
    List<VisitRow> newestOf(Collection<CustomerId> customers, Page page);

    @HQL("from VisitRow where customerId in :customers and status = SCHEDULED order by scheduledFor, id limit 1")
    List<VisitRow> nextOf(Collection<CustomerId> customers);

    @HQL(
            "from VisitRow where customerId in :customers and completedOn is not null order by completedOn desc, id desc limit 1")
    List<VisitRow> lastOf(Collection<CustomerId> customers);

    /** Labor minutes. */
    record Labor(Long paid, Long billed) {}

    @SQL("select coalesce(sum(s.on_site_minutes + s.driving_minutes + s.loading_minutes), 0), "
            + "coalesce(sum(s.on_site_minutes) filter (where v.status = 'BILLED'), 0) "
            + "from visit v join job_sheet s on s.document_id = v.sheet_id where v.completed_on between :from and :to")
    Labor labor(LocalDate from, LocalDate to);

    @HQL("select count(*) from VisitRow where status = SCHEDULED and scheduledFor < :day")
    long scheduledBefore(LocalDate day);

    @HQL("select id from VisitRow where status = COMPLETED")
    List<UUID> idsOfCompleted();

    @HQL("select id from VisitRow where status = COMPLETED and completedOn <= :day")
    List<UUID> idsOfCompletedBy(LocalDate day);

    /**
     * Of the visit's family (the first visit and all returns to it or to each other) those before it, the nearer to the
     * first visit the earlier, then by the day of the work: the service lines of what they did and did not give away.
     */
    @SQL("with recursive up as (select id, returns_to from visit where id = :visit union all "
            + "select v.id, v.returns_to from visit v join up on v.id = up.returns_to), "
            + "family as (select v.id, 0 as depth from visit v join up on v.id = up.id where v.returns_to is null union all "
            + "select v.id, f.depth + 1 from visit v join family f on v.returns_to = f.id), "
            + "before as (select v.sheet_id from family f join visit v on v.id = f.id "
            + "join family own on own.id = :visit join visit this on this.id = own.id "
            + "where v.id <> this.id and v.status in ('COMPLETED', 'BILLED') and (f.depth < own.depth or "
            + "(f.depth = own.depth and (v.completed_on, v.id) < (this.completed_on, this.id)))) "
            + "select distinct l.service_line_id from before b join visit_line l on exists (select 1 from job_sheet_line d "
            + "where d.sheet_id = b.sheet_id and d.visit_line_id = l.id and d.done > 0) "
            + "or (l.sheet_id = b.sheet_id and not exists (select 1 from scope_change s "
            + "where s.sheet_id = b.sheet_id and s.visit_line_id = l.id and s.decision = 'NO_CHARGE'))")
    List<UUID> linesBilledBefore(UUID visit);

    @HQL("from SheetRow where visitId = :visit order by documentId")
    List<SheetRow> sheetsOf(VisitId visit);

    @HQL("select d from ScopeChangeRow d join VisitRow v on v.sheetId = d.sheetId where v.status = COMPLETED "
            + "and d.decision in (OPEN, ASK) and d.id > :after order by d.id")
    List<ScopeChangeRow> undecidedAfter(UUID after, Page page);

    @HQL("select count(distinct d.sheetId) from ScopeChangeRow d join VisitRow v on v.sheetId = d.sheetId "
            + "where v.status = COMPLETED and v.completedOn <= :day and d.decision in (OPEN, ASK)")
    long countUndecidedVisitsBy(LocalDate day);

    @HQL("select d from ScopeChangeRow d join VisitRow v on v.sheetId = d.sheetId where d.decision = RETURN_VISIT "
            + "and d.id > :after and not exists (select 1 from VisitLineRow l join VisitRow r on r.id = l.visitId "
            + "where l.returnsFor = d.id and r.status <> CANCELED) order by d.id")
    List<ScopeChangeRow> awaitingReturnVisitAfter(UUID after, Page page);

    @HQL("select d from ScopeChangeRow d where d.sheetId = :sheet and d.decision = RETURN_VISIT and not exists "
            + "(select 1 from VisitLineRow l join VisitRow r on r.id = l.visitId "
            + "where l.returnsFor = d.id and r.status <> CANCELED) order by d.position")
    List<ScopeChangeRow> awaitingReturnVisitOf(DocumentId sheet);

    @HQL("from SentSheetRow where visitId = :visit order by sentAt, id")
    List<SentSheetRow> sentSheetsOf(VisitId visit);

    @HQL("from SentSheetRow where visitId = :visit and sentBy = :by and fingerprint = :fingerprint")
    List<SentSheetRow> sentSheets(VisitId visit, UserId by, String fingerprint);

    /** How often the same sheet was sent in other words since, or signed off. */
    @HQL(
            "select (select count(*) from SheetRow s where s.documentId = x.sheetId) "
                    + "+ (select count(*) from SentSheetRow l where l.sheetId = x.sheetId and l.sentBy = x.sentBy "
                    + "and (l.sentAt > x.sentAt or (l.sentAt = x.sentAt and l.id > x.id))) from SentSheetRow x where x.id = :sent")
    long laterThan(UUID sent);

    @HQL("select count(*) from VisitLineRow l join VisitRow r on r.id = l.visitId "
            + "where l.returnsFor = :scopeChange and r.status <> CANCELED")
    long returnsScheduledFor(ScopeChangeId scopeChange);
}
