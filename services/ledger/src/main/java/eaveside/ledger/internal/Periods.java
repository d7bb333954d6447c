package eaveside.ledger.internal;

import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.ReadVariances.Variance;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** The months of the books and the number series: everything that posting and closing lock. */
@Shared
public class Periods {
    private final EntityManager entities;
    private final LedgerQueries queries;
    private final Books books;

    @Inject
    public Periods(EntityManager entities, LedgerQueries queries, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
    }

    /**
     * The first day from here on that lies in an open month. That month cannot close until the commit; where it is being
     * closed, waits for that and then looks at the next.
     */
    public LocalDate lockOpenDay(LocalDate from) {
        LocalDate begin = books.company().booksFrom();
        LocalDate day = from.isBefore(begin) ? begin : from;
        while (!lockIfOpen(YearMonth.from(day))) {
            day = YearMonth.from(day).plusMonths(1).atDay(1);
        }
        return day;
    }

    private boolean lockIfOpen(YearMonth month) {
        ensure(month);
        List<?> open = entities.createNativeQuery(
                        "select 1 from period where first_day = :day and closed_at is null for share", Integer.class)
                .setParameter("day", month.atDay(1))
                .getResultList();
        return !open.isEmpty();
    }

    /**
     * Waits for the documents that are being posted into the month, and keeps others out until the commit; refuses any
     * month but the oldest open one.
     */
    public void lockForClose(YearMonth month) {
        ensure(month);
        // JPA's pessimistic lock is the weaker "for no key update" here; the plain word says what is meant.
        entities.createNativeQuery("select 1 from period where first_day = :day for update", Integer.class)
                .setParameter("day", month.atDay(1))
                .getSingleResult();
        PeriodRow row = entities.find(PeriodRow.class, month.atDay(1));
        entities.refresh(row);
        if (row.isClosed()) {
            throw new LedgerRefusal.PeriodNotClosable(month.toString(), "it is closed already");
        }
        YearMonth oldest = YearMonth.from(books.company().booksFrom()).plusMonths(queries.closedPeriods());
        if (!oldest.equals(month)) {
            throw new LedgerRefusal.PeriodNotClosable(month.toString(), "the oldest open month is " + oldest);
        }
    }

    /** Closes the month for good, and keeps what was applied and spent until then. */
    public void close(YearMonth month, List<Variance> variances, UserId by, Instant at) {
        variances.forEach(variance -> entities.persist(new PeriodVarianceRow(month, variance)));
        entities.flush();
        entities.find(PeriodRow.class, month.atDay(1)).close(by, at);
    }

    /** The next number of the series; its counter stays locked until the commit. */
    public long drawNumber(DocumentType type) {
        return lockedSeries(type).draw();
    }

    public @Nullable LocalDate lastDateOf(DocumentType type) {
        return lockedSeries(type).lastDate;
    }

    public void dateSeries(DocumentType type, LocalDate date) {
        lockedSeries(type).lastDate = date;
    }

    private SeriesRow lockedSeries(DocumentType type) {
        return entities.find(SeriesRow.class, type, LockModeType.PESSIMISTIC_WRITE);
    }

    private void ensure(YearMonth month) {
        entities.createNativeQuery("insert into period (first_day) values (:day) on conflict do nothing")
                .setParameter("day", month.atDay(1))
                .executeUpdate();
    }
}
