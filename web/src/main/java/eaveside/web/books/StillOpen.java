package eaveside.web.books;

import eaveside.kernel.Money;
import java.time.LocalDate;
import java.util.List;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * What is not finished of a month, to be seen before it closes. What is finished later posts into a later month.
 *
 * @param  toSignOff        visits that were scheduled until its end and are not signed off
 * @param  toBill           visits completed by its end that are neither billed nor closed
 * @param  toDecide         completed visits whose scope changes are not all decided
 * @param  drafts           drafts of invoices for work of the month or before
 * @param  draftsTotal      what they come to, with tax
 * @param  goodsNotInvoiced goods received by its end that the supplier has not invoiced, at cost; never below zero
 * @param  counts           physical counts posted in the month: without one, stock differences are in no month yet
 */
public record StillOpen(
        LocalDate monthEnd,
        long toSignOff,
        long toBill,
        long toDecide,
        long drafts,
        Money draftsTotal,
        Money goodsNotInvoiced,
        long counts) {

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
    public List<Item> items(String goodsAccount) {
        return Stream.of(
                        new Item("books.still.sign-off", toSignOff, null, "/visits"),
                        new Item("books.still.decide", toDecide, null, "/worklist?type=decide"),
                        new Item("books.still.bill", toBill, null, "/visits?show=COMPLETED"),
                        new Item("books.still.drafts", drafts, draftsTotal, "/invoices?show=drafts"),
                        new Item(
                                "books.still.goods",
                                goodsNotInvoiced.isPositive() ? null : 0L,
                                goodsNotInvoiced,
                                "/books/entries?account=" + goodsAccount + "&to=" + monthEnd))
                .filter(item -> item.count() == null || item.count() > 0)
                .toList();
    }
}
