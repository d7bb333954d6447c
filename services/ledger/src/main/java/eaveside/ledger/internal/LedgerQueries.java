package eaveside.ledger.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.AccountType;
import eaveside.ledger.CostType;
import eaveside.ledger.DocumentHead;
import eaveside.ledger.DocumentType;
import eaveside.ledger.EntryLine;
import jakarta.persistence.EntityManager;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.Collection;
import java.util.List;
import java.util.UUID;
import org.hibernate.annotations.processing.HQL;
import org.hibernate.annotations.processing.SQL;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Queries over the books; the annotation processor checks them when it compiles. */
public interface LedgerQueries {
    EntityManager entityManager();

    /** Waits for others under the same id; holds the turn until the commit. */
    @SQL("select cast(pg_advisory_xact_lock(hashtextextended(:id, 0)) as text)")
    String takeTurn(String id);

    @HQL("from AccountRow order by code")
    List<AccountRow> accounts();

    @HQL("from AccountRow where name = :name")
    List<AccountRow> accountsNamed(String name);

    @HQL("from AccountRow where role = :role")
    List<AccountRow> accountsInRole(AccountRole role);

    @HQL("from PeriodRow order by firstDay desc")
    List<PeriodRow> periods();

    /** Read past the session, which may know the series as it was before others posted; none before its first document. */
    @HQL("select lastDate from SeriesRow where type = :type and lastDate is not null")
    List<LocalDate> lastDateOf(DocumentType type);

    @HQL("select lastDate from SeriesRow where lastDate is not null order by lastDate desc")
    List<LocalDate> lastDateOfAll();

    @HQL("select count(*) from PeriodRow where closedAt is not null")
    long closedPeriods();

    @HQL("from DocumentRow where reverses = :id")
    List<DocumentRow> reversalsOf(DocumentId id);

    @HQL("from EntryRow where key.documentId = :id order by key.line")
    List<EntryRow> entriesOf(UUID id);

    @HQL("select d, e, a.name from EntryRow e join DocumentRow d on d.id = e.key.documentId "
            + "join AccountRow a on a.code = e.accountCode where d.id = :id order by e.key.line")
    List<Line> linesOf(UUID id);

    @HQL(
            "select a.code, a.name, a.type, coalesce(sum(e.amount) filter (where e.postingDate < :first), 0), sum(e.amount) "
                    + "from EntryRow e join AccountRow a on a.code = e.accountCode where e.postingDate <= :to "
                    + "and e.key.documentId not in (select s.documentId from SupersededCloseRow s) "
                    + "group by a.code, a.name, a.type order by a.code")
    List<AccountBalance> balances(LocalDate first, LocalDate to);

    @HQL(
            "select count(*) from DocumentRow where type = :type and reverses is null and postingDate between :from and :to")
    long countOf(DocumentType type, LocalDate from, LocalDate to);

    @HQL("select d, r.id from DocumentRow d left join DocumentRow r on r.reverses = d.id where d.id in (:ids) "
            + "order by d.postedAt, d.id")
    List<Head> heads(List<UUID> ids);

    @HQL("select e.serviceLineId, e.costType, sum(e.amount) from EntryRow e "
            + "where e.accountCode = :account and e.visitId = :visit "
            + "group by e.serviceLineId, e.costType having sum(e.amount) <> 0 order by e.serviceLineId, e.costType")
    List<VisitBalance> visitBalances(String account, VisitId visit);

    @HQL("select e.visitId, sum(e.amount) from EntryRow e where e.accountCode = :account and e.visitId in (:visits) "
            + "group by e.visitId")
    List<VisitTotal> visitTotals(String account, List<VisitId> visits);

    @HQL(
            "select coalesce(sum(e.amount), 0) from EntryRow e where e.customerId in (:customers) and e.accountCode = :account "
                    + "and e.postingDate between :from and :to "
                    + "and e.key.documentId not in (select s.documentId from SupersededCloseRow s)")
    BigDecimal sumOfCustomers(Collection<CustomerId> customers, String account, LocalDate from, LocalDate to);

    @HQL("select e.accountCode, e.serviceLineId, e.costType, "
            + "case when e.findingId is null then false else true end as found, sum(e.amount) from EntryRow e "
            + "where e.accountCode in (:accounts) and e.postingDate between :from and :to "
            + "and e.key.documentId not in (select s.documentId from SupersededCloseRow s) "
            + "group by e.accountCode, e.serviceLineId, e.costType, found")
    List<LineBalance> lineBalances(List<String> accounts, LocalDate from, LocalDate to);

    @HQL(
            "select e.accountCode, e.serviceLineId, year(e.postingDate), month(e.postingDate), sum(e.amount) from EntryRow e "
                    + "where e.accountCode in (:accounts) and e.serviceLineId is not null and e.postingDate between :from and :to "
                    + "and e.key.documentId not in (select s.documentId from SupersededCloseRow s) "
                    + "group by e.accountCode, e.serviceLineId, year(e.postingDate), month(e.postingDate)")
    List<MonthBalance> monthBalances(List<String> accounts, LocalDate from, LocalDate to);

    /** What an account has in a month for a service line. */
    record MonthBalance(String code, ServiceLineId serviceLine, Integer year, Integer month, BigDecimal balance) {}

    /** What a visit has on an account. */
    record VisitTotal(VisitId visit, BigDecimal balance) {}

    /** A document with the one that reverses it. */
    record Head(DocumentRow document, @Nullable UUID reversedBy) {
        public DocumentHead toHead() {
            return document.toHead(reversedBy == null ? null : new DocumentId(reversedBy));
        }
    }

    /** What a visit has on an account, by service line and type of cost. */
    record VisitBalance(
            @Nullable ServiceLineId serviceLine, @Nullable CostType costType, BigDecimal balance) {}

    /** What an account has in a period, by service line, type of cost and whether the work came from a finding. */
    record LineBalance(
            String code,
            @Nullable ServiceLineId serviceLine,
            @Nullable CostType costType,
            boolean found,
            BigDecimal balance) {}

    /** An account's sums of entries before a first day, and up to a last. */
    record AccountBalance(String code, String name, AccountType type, BigDecimal opening, BigDecimal closing) {
        public BigDecimal change() {
            return closing.subtract(opening);
        }
    }

    /** An entry with its document and its account's name. */
    record Line(DocumentRow document, EntryRow entry, String accountName) {
        public EntryLine toLine(CurrencyUnit currency) {
            return new EntryLine(
                    new DocumentId(document.id),
                    document.type,
                    document.number,
                    document.postingDate,
                    entry.key.line(),
                    new AccountCode(entry.accountCode),
                    accountName,
                    Money.of(currency, entry.amount.stripTrailingZeros()),
                    entry.serviceLineId,
                    entry.visitId,
                    entry.customerId,
                    entry.costType,
                    entry.findingId,
                    entry.note);
        }
    }
}
