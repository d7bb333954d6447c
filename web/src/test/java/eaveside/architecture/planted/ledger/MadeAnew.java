package eaveside.architecture.planted.ledger;

import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;

/** Planted: a use case that is made anew, with all its parts, for each that uses it. */
@Dependent
public class MadeAnew {
    private final Remembers remembers;

    @Inject
    public MadeAnew(Remembers remembers) {
        this.remembers = remembers;
    }

    public void use() {
        remembers.say("used");
    }
}
