package eaveside.worklist;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Money;
import eaveside.kernel.Quantity;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * One thing that is due.
 *
 * @param  key       which thing it is
 * @param  opens     the id of what is opened for it: of a sent sheet its visit, of stock its location
 * @param  customer  null for stock
 * @param  phone     the customer's; empty where none is known
 * @param  since     since when it is due
 * @param  day       a day that matters beside it: a quote's last, an invoice's due date
 * @param  number    of the document, or how many scope changes; null where there is none
 * @param  amount    in sales value, without tax where nothing is billed yet; null where none is known
 * @param  name      what it is about: the site, the item, the finding's type, who sent it, what was noted
 * @param  detail    a quote's status, a finding's severity, an item's location; may be empty
 * @param  urgent    whether it should not wait for the others
 * @param  held      of an item; null for all else
 * @param  wanted    the item's reorder point; null for all else
 * @param  aside     until when it was put aside, and why; null where it was not
 */
public record DueItem(
        DueKey key,
        String opens,
        @Nullable CustomerId customer,
        String customerName,
        String phone,
        LocalDate since,
        LocalDate day,
        @Nullable Long number,
        @Nullable Money amount,
        String name,
        String detail,
        boolean urgent,
        @Nullable Quantity held,
        @Nullable Quantity wanted,
        @Nullable Aside aside) {
    /** What was put aside: until when, and why. */
    public record Aside(LocalDate until, String note) {}
}
