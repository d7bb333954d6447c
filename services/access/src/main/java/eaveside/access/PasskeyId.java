package eaveside.access;

import eaveside.kernel.Ids;
import java.util.UUID;

/** Identifies a passkey in a list. */
public record PasskeyId(UUID value) {
    public static PasskeyId next() {
        return new PasskeyId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static PasskeyId of(String text) {
        return new PasskeyId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
