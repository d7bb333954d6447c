package eaveside.demo;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;

/**
 * Another clock's time for everybody, except for what runs within {@link #inHistory}: that says itself what time it is.
 * The time is bound to the call and its thread, so that no request can ever see or set it.
 */
public final class DemoClock extends Clock {
    private static final ScopedValue<AtomicReference<Instant>> HISTORY = ScopedValue.newInstance();

    private final Clock other;

    public DemoClock(Clock other) {
        this.other = other;
    }

    /** Runs the work with a time that it moves itself; until it first does, the other clock's time goes on. */
    public static <T> T inHistory(Function<DemoTime, T> work) {
        AtomicReference<Instant> now = new AtomicReference<>();
        return ScopedValue.where(HISTORY, now).call(() -> work.apply(now::set));
    }

    @Override
    public ZoneId getZone() {
        return other.getZone();
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return new DemoClock(other.withZone(zone));
    }

    @Override
    public Instant instant() {
        Instant moved = HISTORY.isBound() ? HISTORY.get().get() : null;
        return moved != null ? moved : other.instant();
    }
}
