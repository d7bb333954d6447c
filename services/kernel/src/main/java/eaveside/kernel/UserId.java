package eaveside.kernel;

import java.util.UUID;

/** Identifies a person who signs in. */
public record UserId(UUID value) implements Id {
    public static UserId next() {
        return new UserId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static UserId of(String text) {
        return new UserId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
