package eaveside.kernel;

import java.util.UUID;

/** Identifies a line of an invoice. */
public record InvoiceLineId(UUID value) implements Id {
    public static InvoiceLineId next() {
        return new InvoiceLineId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static InvoiceLineId of(String text) {
        return new InvoiceLineId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
