package eaveside.kernel;

import java.util.UUID;

/** Identifies a store room or van. */
public record LocationId(UUID value) implements Id {
    public static LocationId next() {
        return new LocationId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static LocationId of(String text) {
        return new LocationId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
