package eaveside.kernel;

import java.util.UUID;

/** Identifies a person at a customer's. */
public record ContactId(UUID value) implements Id {
    public static ContactId next() {
        return new ContactId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static ContactId of(String text) {
        return new ContactId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
