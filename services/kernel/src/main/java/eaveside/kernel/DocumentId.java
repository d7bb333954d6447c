package eaveside.kernel;

import java.util.UUID;

/** Identifies a posted document of either ledger. */
public record DocumentId(UUID value) implements Id {
    public static DocumentId next() {
        return new DocumentId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static DocumentId of(String text) {
        return new DocumentId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
