package eaveside.web.books;

import eaveside.kernel.Money;
import eaveside.ledger.AccountCode;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What is not finished of a month, to be seen before it closes. What is finished later posts into a later month.
 *
 * @param  visitsToSignOff    that were scheduled until its end and are not signed off
 * @param  visitsToDecide     completed, and their scope changes are not all decided
 * @param  visitsToBill       completed by its end, neither billed nor closed
 * @param  invoiceDrafts      for work of the month or before
 * @param  invoiceDraftsTotal what they come to, with tax
 * @param  goodsNotInvoiced   received by its end and not invoiced by the supplier, at cost; never below zero
 * @param  physicalCounts     posted in the month: without one, stock differences are in no month yet
 */
public record StillOpen(
        long visitsToSignOff,
        long visitsToDecide,
        long visitsToBill,
        long invoiceDrafts,
        Money invoiceDraftsTotal,
        Money goodsNotInvoiced,
        long physicalCounts) {

    /**
     * A line of the list.
     *
     * @param  key   of its text
     * @param  count how many; null where only the amount tells
     * @param  link  to where it is finished
     */
    public record Item(
            String key, @Nullable Long count, @Nullable Money amount, String link) {}

    /** Those of which there is something, in the order of the work. */
    List<Item> items(AccountCode goods, LocalDate monthEnd) {
        return Stream.of(
                        new Item("books.still.sign-off", visitsToSignOff, null, "/visits"),
                        new Item("books.still.decide", visitsToDecide, null, "/worklist?type=decide"),
                        new Item("books.still.bill", visitsToBill, null, "/visits?show=COMPLETED"),
                        new Item("books.still.drafts", invoiceDrafts, invoiceDraftsTotal, "/invoices?show=DRAFTS"),
                        new Item(
                                "books.still.goods",
                                goodsNotInvoiced.isPositive() ? null : 0L,
                                goodsNotInvoiced,
                                "/books/entries?account=" + goods + "&to=" + monthEnd))
                .filter(item -> item.count() == null || item.count() > 0)
                .toList();
    }
}
