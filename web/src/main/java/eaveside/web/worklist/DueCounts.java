package eaveside.web.worklist;

import eaveside.findings.ReadFindings;
import eaveside.inventory.ReadStock;
import eaveside.invoicing.ReadInvoices;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.ReadQuotes;
import eaveside.visits.ReadSentSheets;
import eaveside.visits.ReadSheets;
import eaveside.visits.ReadVisits;
import eaveside.web.worklist.WorklistItem.Type;
import jakarta.inject.Inject;
import java.util.EnumMap;
import java.util.Map;

/** Counts what is due for the company, of each type: for the menu of every page, so nothing is read but counts. */
@Shared
public class DueCounts {
    @Inject
    ReadSentSheets readSentSheets;

    @Inject
    ReadQuotes readQuotes;

    @Inject
    ReadVisits readVisits;

    @Inject
    ReadSheets readSheets;

    @Inject
    ReadInvoices readInvoices;

    @Inject
    ReadFindings readFindings;

    @Inject
    ReadStock readStock;

    @Inject
    Books books;

    /** Of each type that has any; the worklist lists just these. */
    public Map<Type, Long> read() {
        Map<Type, Long> due = new EnumMap<>(Type.class);
        due.put(Type.SHEET, readSentSheets.countUnread());
        due.put(Type.QUOTE, readQuotes.countOpen());
        due.put(Type.PLAN, readVisits.countScheduledBefore(books.today()));
        due.put(Type.BILL, readVisits.countCompletedNotBilled());
        due.put(Type.DECIDE, readSheets.countUndecidedVisits());
        due.put(Type.MONEY, readInvoices.pastDueInAll().invoices());
        due.put(Type.FINDING, readFindings.countOpen());
        due.put(Type.STOCK, (long) readStock.belowReorderPoint().size());
        due.values().removeIf(count -> count == 0);
        return due;
    }
}
