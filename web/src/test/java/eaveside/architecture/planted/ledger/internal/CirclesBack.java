package eaveside.architecture.planted.ledger.internal;

import eaveside.architecture.planted.ledger.LeansOnInside;

/** Leans on the use case that leans on it. */
public final class CirclesBack {
    private CirclesBack() {}

    /** What the use case should have handed over. */
    public static String name() {
        return LeansOnInside.NAME.repeat(2);
    }
}
