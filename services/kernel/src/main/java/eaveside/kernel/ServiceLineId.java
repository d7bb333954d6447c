package eaveside.kernel;

import java.util.UUID;

/** Identifies a service line, such as arrays or windows. */
public record ServiceLineId(UUID value) implements Id {
    public static ServiceLineId next() {
        return new ServiceLineId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static ServiceLineId of(String text) {
        return new ServiceLineId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
