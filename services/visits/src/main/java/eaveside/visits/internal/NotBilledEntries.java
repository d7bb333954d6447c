package eaveside.visits.internal;

import eaveside.kernel.PriceBookId;
import eaveside.kernel.Shared;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.Entry;
import eaveside.pricing.PriceBook;
import eaveside.pricing.PriceWork;
import eaveside.pricing.PricedWork;
import eaveside.pricing.ReadPriceBooks;
import eaveside.visits.BillableLine;
import jakarta.inject.Inject;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is posted for a visit that is closed without an invoice. */
@Shared
public class NotBilledEntries {
    private final Visits visits;
    private final BillableLines billableLines;
    private final ReadPriceBooks priceBooks;
    private final PriceWork priceWork;
    private final Books books;

    @Inject
    public NotBilledEntries(
            Visits visits, BillableLines billableLines, ReadPriceBooks priceBooks, PriceWork priceWork, Books books) {
        this.visits = visits;
        this.billableLines = billableLines;
        this.priceBooks = priceBooks;
        this.priceWork = priceWork;
        this.books = books;
    }

    /** Cost by line and type from work in progress, and the memorandum of no-charge work, where prices are known. */
    public List<Entry> of(VisitRow visit) {
        List<BillableLine> done = billableLines.of(visit);
        List<Entry> entries = new ArrayList<>();
        for (SheetCost.Part part :
                visits.sheetInForce(visit).cost(books.currency()).parts()) {
            entries.add(Entry.debit(AccountRole.COST_OF_SERVICES, part.amount())
                    .on(part.serviceLine(), visit.id(), visit.customer())
                    .as(part.type()));
            entries.add(Entry.credit(AccountRole.WORK_IN_PROGRESS, part.amount())
                    .on(part.serviceLine(), visit.id(), visit.customer())
                    .as(part.type()));
        }
        bookOf(visit).ifPresent(book -> {
            List<PriceWork.DoneLine> noCharge = noCharge(done, book);
            if (!noCharge.isEmpty()) {
                addNoCharge(entries, visit, priceWork.priceDone(book.id(), noCharge));
            }
        });
        return entries;
    }

    private Optional<PriceBook> bookOf(VisitRow visit) {
        PriceBookId pinned = visit.priceBook();
        return pinned == null ? priceBooks.findInForce(visit.day()) : Optional.of(priceBooks.book(pinned));
    }

    /** Work that has no price has no value to record, and must not keep the visit open. */
    private static List<PriceWork.DoneLine> noCharge(List<BillableLine> done, PriceBook book) {
        return done.stream()
                .filter(line -> line.quoteLine() != null
                        || book.list().priceOf(line.serviceItem()).isPresent())
                .map(line -> new PriceWork.DoneLine(
                        line.line(), line.serviceItem(), line.quantity(), line.surface(), line.quoteLine(), true))
                .toList();
    }

    private static void addNoCharge(List<Entry> entries, VisitRow visit, PricedWork priced) {
        for (PricedWork.Line line : priced.lines()) {
            if (!line.net().isZero()) {
                entries.add(Entry.debit(AccountRole.NO_CHARGE_GIVEN, line.net())
                        .on(line.serviceLine(), visit.id(), visit.customer()));
                entries.add(Entry.credit(AccountRole.NO_CHARGE_CONTRA, line.net())
                        .on(line.serviceLine(), visit.id(), visit.customer()));
            }
        }
    }
}
