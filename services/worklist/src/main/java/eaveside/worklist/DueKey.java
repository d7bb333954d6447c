package eaveside.worklist;

import eaveside.kernel.KernelRefusal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;

/**
 * Which thing is due: of which of many modules is known only by its type, so its id is text here.
 *
 * @param  thing its id, of whatever type that is
 * @param  place of an item of the stock the id of its location; of all else the thing again
 */
public record DueKey(DueType type, String thing, String place) {
    private static final Pattern ID = Pattern.compile("[0-9a-f]{8}(-[0-9a-f]{4}){3}-[0-9a-f]{12}");
    private static final Pattern WRITTEN = Pattern.compile("([A-Z_]+):([^:]+):([^:]+)");

    public DueKey {
        if (!ID.matcher(thing).matches() || !ID.matcher(place).matches()) {
            throw new KernelRefusal.BadText("item", "is nothing that can be due");
        }
    }

    /** As {@link #toString} writes it; refuses anything else. */
    public static DueKey parse(String text) {
        Matcher written = WRITTEN.matcher(text);
        if (written.matches()) {
            for (DueType type : DueType.values()) {
                if (type.name().equals(written.group(1))) {
                    return new DueKey(type, written.group(2), written.group(3));
                }
            }
        }
        throw new KernelRefusal.BadText("item", "is nothing that can be due");
    }

    @Override
    public String toString() {
        return type + ":" + thing + ":" + place;
    }
}
