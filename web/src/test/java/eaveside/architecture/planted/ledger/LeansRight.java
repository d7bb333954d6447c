package eaveside.architecture.planted.ledger;

import eaveside.architecture.planted.visits.ReachesInside;

/** Planted: the ledger lies left of visits and must not know it. */
public final class LeansRight {
    private final ReachesInside visit = new ReachesInside();

    public double weighs() {
        return visit.peek().length();
    }
}
