package eaveside.inventory;

import eaveside.kernel.Check;
import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import eaveside.ledger.Postable;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A physical count of a location, and why it was made.
 *
 * @param  date at whose end the goods were counted; null for today
 */
public record StockCount(
        DocumentId id, @Nullable LocalDate date, LocationId location, String reason, List<CountedItem> lines, UserId by)
        implements Postable {
    public StockCount {
        Check check = new Check();
        reason = check.required("reason", reason, 300);
        lines = List.copyOf(lines);
        check.that(!lines.isEmpty(), () -> new KernelRefusal.NoRows("lines"));
        check.done();
    }
}
