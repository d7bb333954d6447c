package eaveside.web.books;

import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReadVariances;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import jakarta.inject.Inject;
import java.time.Instant;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

/** Collects from every module what there is to say of a month: its variances, and what is still open of it. */
@Shared
class MonthEnd {
    @Inject
    ReadVisits readVisits;

    @Inject
    ReadSheets readSheets;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadLedger readLedger;

    @Inject
    ReadVariances readVariances;

    @Inject
    Books books;

    /** Refuses a month that the books do not have. */
    Month month(YearMonth month) {
        Instant closedAt = readLedger.period(month).closedAt();
        return new Month(
                month,
                closedAt,
                closedAt == null && isOver(month) && month.equals(readLedger.oldestOpen()),
                readVariances.between(month.atDay(1), month.atEndOfMonth()),
                stillOpen(month));
    }

    boolean isOver(YearMonth month) {
        return month.atEndOfMonth().isBefore(books.today());
    }

    private Month.StillOpen stillOpen(YearMonth month) {
        LocalDate end = month.atEndOfMonth();
        ReadInvoices.DraftsInAll drafts = readInvoices.draftsBy(end);
        EntryFilter goods = new EntryFilter(
                null, end, List.of(AccountRole.GOODS_NOT_INVOICED), null, false, null, List.of(), null, false);
        Money notInvoiced = readLedger.total(goods).negated();
        return new Month.StillOpen(
                readVisits.countScheduledBefore(end.plusDays(1)),
                readSheets.countUndecidedVisitsBy(end),
                readVisits.completedNotBilledBy(end).size(),
                drafts.drafts(),
                drafts.gross(),
                notInvoiced.isPositive() ? notInvoiced : books.zero(),
                readLedger.countOf(DocumentType.COUNT, month.atDay(1), end));
    }
}
