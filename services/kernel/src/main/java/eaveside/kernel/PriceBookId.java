package eaveside.kernel;

import java.util.UUID;

/** Identifies one version of the price book. */
public record PriceBookId(UUID value) implements Id {
    public static PriceBookId next() {
        return new PriceBookId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static PriceBookId of(String text) {
        return new PriceBookId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
