package eaveside.kernel;

import java.util.UUID;

/** Identifies a store room or van. */
public record PlaceId(UUID value) implements Id {
    public static PlaceId next() {
        return new PlaceId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static PlaceId of(String text) {
        return new PlaceId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
