package eaveside.kernel;

import java.util.UUID;

/** Identifies a service item that can be quoted and billed. */
public record ServiceItemId(UUID value) implements Id {
    public static ServiceItemId next() {
        return new ServiceItemId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static ServiceItemId of(String text) {
        return new ServiceItemId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
