package eaveside.kernel;

import java.util.UUID;

/** Identifies a service item that can be quoted and billed. */
public record OfferingId(UUID value) implements Id {
    public static OfferingId next() {
        return new OfferingId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static OfferingId of(String text) {
        return new OfferingId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
