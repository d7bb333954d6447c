package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertSame;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.testing.MovableClock;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.Test;

class ClockProducerTest {
    private final MovableClock machine = new MovableClock();

    @Test
    void the_time_begins_where_it_was_told_to_and_runs_on() {
        Clock clock = ClockProducer.startingAt("2028-02-29T18:00:00Z", machine);
        assertEquals(Instant.parse("2028-02-29T18:00:00Z"), clock.instant());
        machine.forward(Duration.ofHours(7));
        assertEquals(Instant.parse("2028-03-01T01:00:00Z"), clock.instant());
    }

    @Test
    void without_it_the_machine_says_the_time() {
        assertSame(machine, ClockProducer.startingAt(null, machine));
        assertSame(machine, ClockProducer.startingAt(" ", machine));
    }

    @Test
    void what_is_no_instant_is_refused_by_the_name_of_the_option() {
        var refused =
                assertThrows(IllegalArgumentException.class, () -> ClockProducer.startingAt("29 February", machine));
        assertTrue(String.valueOf(refused.getMessage()).startsWith("eaveside.clock.start is no instant"));
    }
}
