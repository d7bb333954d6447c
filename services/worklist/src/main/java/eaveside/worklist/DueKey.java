package eaveside.worklist;

import eaveside.kernel.KernelRefusal;
import java.util.UUID;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which thing is due.
 *
 * @param  id    the thing's own
 * @param  place of an item of the stock its location; of all else the id again
 */
public record DueKey(DueType type, UUID id, UUID place) {
    private static final Pattern WRITTEN = Pattern.compile("([A-Z_]+):([0-9a-f-]{36}):([0-9a-f-]{36})");

    /** As {@link #toString} writes it; refuses anything else. */
    public static DueKey parse(String text) {
        Matcher written = WRITTEN.matcher(text);
        try {
            if (written.matches()) {
                return new DueKey(
                        DueType.valueOf(written.group(1)),
                        UUID.fromString(written.group(2)),
                        UUID.fromString(written.group(3)));
            }
        } catch (IllegalArgumentException unknown) {
            // told below, like everything else that is no key
        }
        throw new KernelRefusal.BadText("item", "is nothing that can be due");
    }

    @Override
    public String toString() {
        return type + ":" + id + ":" + place;
    }
}
