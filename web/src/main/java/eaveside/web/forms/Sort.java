package eaveside.web.forms;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import eaveside.kernel.UnitPrice;
import jakarta.ws.rs.core.MultivaluedMap;
import java.text.Collator;
import java.util.Comparator;
import java.util.Locale;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * How a list is sorted, as its address says: {@code sort=name}, or {@code sort=-name} for the other way round.
 *
 * @param  column empty for none
 */
record Sort(String column, boolean descending) {
    static Sort asked(MultivaluedMap<String, String> filters) {
        String said = Listing.value(filters, "sort");
        return said.startsWith("-") ? new Sort(said.substring(1), true) : new Sort(said, false);
    }

    /** What the address says once the head of the column was pressed. */
    String next(String pressed) {
        return pressed.equals(column) && !descending ? "-" + pressed : pressed;
    }

    /** For screen readers, at the head of a column; null where the list is not sorted by it. */
    @Nullable
    String aria(String head) {
        return !head.equals(column) ? null : descending ? "descending" : "ascending";
    }

    /** By what the column says; what it says nothing of comes last either way. */
    <R> Comparator<R> by(Function<R, @Nullable Object> value) {
        Comparator<Object> order = descending ? Sort.values().reversed() : Sort.values();
        return Comparator.comparing(value, Comparator.nullsLast(order));
    }

    private static Comparator<Object> values() {
        Collator words = Collator.getInstance(Locale.ENGLISH);
        return (a, b) -> {
            Object left = plain(a);
            Object right = plain(b);
            return left.getClass() == right.getClass() && left instanceof Comparable<?> && !(left instanceof String)
                    ? compared(left, right)
                    : words.compare(left.toString(), right.toString());
        };
    }

    @SuppressWarnings("unchecked")
    private static int compared(Object left, Object right) {
        return ((Comparable<Object>) left).compareTo(right);
    }

    /** The number in an amount or a measure; all of a column are in one currency and mostly in one unit. */
    private static Object plain(Object value) {
        return switch (value) {
            case Money amount -> amount.amount();
            case Quantity quantity -> quantity.value();
            case UnitPrice price -> price.amount();
            case Percent rate -> rate.value();
            default -> value;
        };
    }
}
