package eaveside.architecture.planted.visits;

import eaveside.architecture.planted.ledger.internal.Hidden;
import eaveside.kernel.Decision;
import jakarta.persistence.EntityManager;
import java.time.LocalDate;

/** Planted: a decision that reaches into another module, asks the container and reads the machine's time. */
@Decision
public final class ReachesInside {
    private EntityManager entities;

    public String peek() {
        return Hidden.secret() + LocalDate.now() + entities;
    }
}
