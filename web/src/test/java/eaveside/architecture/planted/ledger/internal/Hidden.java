package eaveside.architecture.planted.ledger.internal;

/** Belongs to the planted ledger alone. */
public final class Hidden {
    private Hidden() {}

    public static String secret() {
        return "hidden";
    }
}
