package eaveside.kernel;

import java.util.UUID;

/** Identifies a payment received. */
public record PaymentId(UUID value) implements Id {
    public static PaymentId next() {
        return new PaymentId(Ids.next());
    }

    /** From text; anything that is not a UUID is refused as not found. */
    public static PaymentId of(String text) {
        return new PaymentId(Ids.parse(text));
    }

    @Override
    public String toString() {
        return value.toString();
    }
}
