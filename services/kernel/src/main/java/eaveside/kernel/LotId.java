package eaveside.kernel;

import java.util.UUID;

/** Identifies one delivery of a consumable, with its cost. */
public record LotId(UUID value) implements Id {
    public static LotId next() {
        return new LotId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static LotId of(String text) {
        return new LotId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
