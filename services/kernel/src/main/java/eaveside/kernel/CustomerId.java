package eaveside.kernel;

import java.util.UUID;

/** Identifies a customer. */
public record CustomerId(UUID value) implements Id {
    public static CustomerId next() {
        return new CustomerId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static CustomerId of(String text) {
        return new CustomerId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
