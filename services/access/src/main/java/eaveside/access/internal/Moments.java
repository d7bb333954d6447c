package eaveside.access.internal;

import eaveside.kernel.Decision;
import java.time.Instant;
import java.time.temporal.ChronoUnit;

/** Moments as finely as the database keeps them: what is compared later is what was stored, however fine the clock is. */
@Decision
final class Moments {
    private Moments() {}

    static Instant asKept(Instant moment) {
        return moment.truncatedTo(ChronoUnit.MICROS);
    }
}
