package eaveside.access;

import eaveside.kernel.Ids;
import java.util.UUID;

/** Identifies a bearer token without being it. */
public record TokenId(UUID value) {
    public static TokenId next() {
        return new TokenId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static TokenId of(String text) {
        return new TokenId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
