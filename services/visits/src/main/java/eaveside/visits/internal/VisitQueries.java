package eaveside.visits.internal;

import eaveside.visits.VisitStatus;
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
    /** Turns of everybody who books a visit: "visits" in hexadecimal. */
    long BOOKING = 0x7669_7369_7473L;

    EntityManager entityManager();

    /** Waits for others under the key; holds it until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(:key) as text)")
    String takeTurn(long key);

    @HQL("from VisitLineRow where visitId = :visit and sheetId is null order by position")
    List<VisitLineRow> plannedLines(UUID visit);

    @HQL("from VisitLineRow where sheetId = :sheet order by position")
    List<VisitLineRow> extraLines(UUID sheet);

    @HQL("from DifferenceRow where sheetId = :sheet order by position")
    List<DifferenceRow> differences(UUID sheet);

    @HQL("from VisitRow where quoteId = :quote and returnsTo is null and status <> CANCELLED")
    List<VisitRow> bookedFor(UUID quote);

    @HQL("select v from VisitRow v join v.crew c where c = :user and v.plannedFor = :day and v.status <> CANCELLED "
            + "order by v.id")
    List<VisitRow> ofCrewMember(UUID user, LocalDate day);

    @HQL("from VisitRow where status = :status and (plannedFor > :day or (plannedFor = :day and id > :id)) "
            + "order by plannedFor, id")
    List<VisitRow> plannedAfter(VisitStatus status, LocalDate day, UUID id, Page page);

    @HQL("from VisitRow where status = :status and (doneOn > :day or (doneOn = :day and id > :id)) order by doneOn, id")
    List<VisitRow> doneAfter(VisitStatus status, LocalDate day, UUID id, Page page);

    @HQL("select count(*) from VisitRow where status = PLANNED and plannedFor < :day")
    long plannedBefore(LocalDate day);

    @HQL("select id from VisitRow where status = DONE")
    List<UUID> idsOfDone();

    @HQL("from VisitRow where customerId in :customers "
            + "and (plannedFor < :day or (plannedFor = :day and id < :id)) order by plannedFor desc, id desc")
    List<VisitRow> ofCustomersBefore(Collection<UUID> customers, LocalDate day, UUID id, Page page);

    @HQL("from SheetRow where visitId = :visit order by documentId")
    List<SheetRow> sheetsOf(UUID visit);

    @HQL("from SheetRow s where s.documentId < :before and exists (select 1 from s.counts) order by s.documentId desc")
    List<SheetRow> sheetsWithCounts(UUID before, Page page);

    @HQL("select d from DifferenceRow d join VisitRow v on v.sheetId = d.sheetId where v.status = DONE "
            + "and d.decision in (OPEN, ASK) and d.id > :after order by d.id")
    List<DifferenceRow> undecidedAfter(UUID after, Page page);

    @HQL("select v.id, v.customerId, coalesce(v.doneOn, v.plannedFor), count(*) "
            + "from DifferenceRow d join VisitRow v on v.sheetId = d.sheetId "
            + "where v.status = DONE and d.decision in (OPEN, ASK) "
            + "group by v.id, v.customerId, coalesce(v.doneOn, v.plannedFor) "
            + "order by coalesce(v.doneOn, v.plannedFor), v.id fetch first :most rows only")
    List<UndecidedVisit> undecidedVisits(int most);

    @HQL("select count(distinct d.sheetId) from DifferenceRow d join VisitRow v on v.sheetId = d.sheetId "
            + "where v.status = DONE and d.decision in (OPEN, ASK)")
    long countUndecidedVisits();

    /** A done visit with so many differences that are open or wait for the customer. */
    record UndecidedVisit(UUID visit, UUID customer, LocalDate since, Long differences) {}

    @HQL("select d from DifferenceRow d join VisitRow v on v.sheetId = d.sheetId where d.decision = COME_BACK "
            + "and d.id > :after and not exists (select 1 from VisitLineRow l join VisitRow r on r.id = l.visitId "
            + "where l.comesBackFor = d.id and r.status <> CANCELLED) order by d.id")
    List<DifferenceRow> toComeBackForAfter(UUID after, Page page);

    @HQL("select d from DifferenceRow d where d.sheetId = :sheet and d.decision = COME_BACK and not exists "
            + "(select 1 from VisitLineRow l join VisitRow r on r.id = l.visitId "
            + "where l.comesBackFor = d.id and r.status <> CANCELLED) order by d.position")
    List<DifferenceRow> toComeBackForOf(UUID sheet);

    @HQL("select count(*) from VisitLineRow l join VisitRow r on r.id = l.visitId "
            + "where l.comesBackFor = :difference and r.status <> CANCELLED")
    long returnsBookedFor(UUID difference);
}
