package eaveside.kernel;

import java.util.UUID;

/** Identifies a difference between planned and done. */
public record ScopeChangeId(UUID value) implements Id {
    public static ScopeChangeId next() {
        return new ScopeChangeId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static ScopeChangeId of(String text) {
        return new ScopeChangeId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
