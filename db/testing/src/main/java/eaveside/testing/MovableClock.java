package eaveside.testing;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that stands still until a test moves it. Starts at noon UTC on 2 March 2026. */
public final class MovableClock extends Clock {
    private Instant now = Instant.parse("2026-03-02T12:00:00Z");

    /** Moves to noon UTC of the day. */
    public void to(LocalDate day) {
        now = day.atTime(LocalTime.NOON).toInstant(ZoneOffset.UTC);
    }

    public void forward(Duration by) {
        now = now.plus(by);
    }

    @Override
    public ZoneId getZone() {
        return ZoneOffset.UTC;
    }

    @Override
    public Clock withZone(ZoneId zone) {
        return Clock.fixed(now, zone);
    }

    @Override
    public Instant instant() {
        return now;
    }
}
