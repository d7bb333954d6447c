package eaveside.demo;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.concurrent.CompletableFuture;
import org.junit.jupiter.api.Test;

class DemoClockTest {
    private static final Instant PRESENT = Instant.parse("2026-11-25T12:00:00Z");
    private static final Instant PAST = Instant.parse("2026-08-01T12:00:00Z");

    private final Clock clock = new DemoClock(Clock.fixed(PRESENT, ZoneOffset.UTC));

    @Test
    void the_history_says_its_own_time_and_nobody_else_sees_it() {
        Instant elsewhere = DemoClock.inHistory(time -> {
            assertEquals(PRESENT, clock.instant(), "until it is first moved");
            time.moveTo(PAST);
            assertEquals(PAST, clock.instant());
            return CompletableFuture.supplyAsync(clock::instant).join();
        });

        assertEquals(PRESENT, elsewhere, "on another thread meanwhile");
        assertEquals(PRESENT, clock.instant(), "afterwards");
    }
}
