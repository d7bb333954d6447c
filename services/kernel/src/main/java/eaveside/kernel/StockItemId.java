package eaveside.kernel;

import java.util.UUID;

/** Identifies a consumable. */
public record StockItemId(UUID value) implements Id {
    public static StockItemId next() {
        return new StockItemId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static StockItemId of(String text) {
        return new StockItemId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
