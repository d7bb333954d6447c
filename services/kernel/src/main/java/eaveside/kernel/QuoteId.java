package eaveside.kernel;

import java.util.UUID;

/** Identifies a quote. */
public record QuoteId(UUID value) implements Id {
    public static QuoteId next() {
        return new QuoteId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static QuoteId of(String text) {
        return new QuoteId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
