package eaveside.kernel;

import java.util.UUID;

/** Identifies an invoice or credit memo, and its draft before. */
public record InvoiceId(UUID value) implements Id {
    public static InvoiceId next() {
        return new InvoiceId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static InvoiceId of(String text) {
        return new InvoiceId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
