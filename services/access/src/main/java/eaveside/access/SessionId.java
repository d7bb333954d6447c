package eaveside.access;

import eaveside.kernel.Ids;
import java.util.UUID;

/** Names a session in a list without being what lets in. */
public record SessionId(UUID value) {
    public static SessionId next() {
        return new SessionId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static SessionId of(String text) {
        return new SessionId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
