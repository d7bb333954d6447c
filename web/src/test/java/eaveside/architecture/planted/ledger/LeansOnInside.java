package eaveside.architecture.planted.ledger;

import eaveside.architecture.planted.ledger.internal.CirclesBack;

/** A use case whose inside asks back. */
public final class LeansOnInside {
    public static final String NAME = new String("leans");

    private LeansOnInside() {}

    public static String name() {
        return CirclesBack.name();
    }
}
