package eaveside.kernel;

import java.util.UUID;

/** Identifies a line of a quote. */
public record QuoteLineId(UUID value) implements Id {
    public static QuoteLineId next() {
        return new QuoteLineId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static QuoteLineId of(String text) {
        return new QuoteLineId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
