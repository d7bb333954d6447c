package eaveside.architecture.planted.ledger;

import jakarta.transaction.Transactional;

/** Planted: a use case that changes something and tells nobody. */
public final class ChangesInSilence {
    @Transactional
    public void change() {}
}
