package eaveside.web.books;

import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.Money;
import eaveside.ledger.AccountRef;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.EntryFilter;
import eaveside.ledger.ReadLedger;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;

/** Collects from every module what is still open for a month. */
@Dependent
class MonthEnd {
    private final ReadVisits readVisits;
    private final ReadSheets readSheets;
    private final ReadInvoices readInvoices;
    private final ReadLedger readLedger;
    private final Books books;

    @Inject
    MonthEnd(
            ReadVisits readVisits,
            ReadSheets readSheets,
            ReadInvoices readInvoices,
            ReadLedger readLedger,
            Books books) {
        this.readVisits = readVisits;
        this.readSheets = readSheets;
        this.readInvoices = readInvoices;
        this.readLedger = readLedger;
        this.books = books;
    }

    StillOpen stillOpen(YearMonth month) {
        LocalDate end = month.atEndOfMonth();
        ReadInvoices.DraftsInAll drafts = readInvoices.draftsBy(end);
        List<AccountRef> goods = List.of(AccountRole.GOODS_NOT_INVOICED);
        Money notInvoiced = readLedger
                .total(new EntryFilter(null, end, goods, null, false, null, List.of(), null, false))
                .negated();
        return new StillOpen(
                end,
                readVisits.countScheduledBefore(end.plusDays(1)),
                readVisits.doneUnbilledBy(end).size(),
                readSheets.countUndecidedVisitsBy(end),
                drafts.drafts(),
                drafts.gross(),
                notInvoiced.isPositive() ? notInvoiced : books.zero(),
                readLedger.countOf(DocumentType.COUNT, month.atDay(1), end));
    }
}
