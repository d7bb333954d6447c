package eaveside.kernel;

import java.util.UUID;

/** Identifies one delivery of a consumable, with its cost. */
public record LotId(UUID value) implements Id {
    public static LotId next() {
        return new LotId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static LotId of(String text) {
        return new LotId(Ids.parse(text));
    }

    /** Of the lot that a line of a document brings in where nobody names one: the same for the same line. */
    public static LotId of(DocumentId document, int line) {
        return new LotId(Ids.derived(document.value(), "lot " + line));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
