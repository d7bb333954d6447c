package eaveside.web;

import eaveside.demo.DemoClock;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.inject.Produces;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * The one place where the running application asks the machine for the time; only the demo's history has its own. For tests
 * and demonstrations the system property {@value #START} names the instant at which the application's time begins, such as
 * {@code 2028-02-29T18:00:00Z}; it runs on from there.
 */
@ApplicationScoped
public class ClockProducer {
    static final String START = "eaveside.clock.start";

    private static final Logger LOG = Logger.getLogger(ClockProducer.class.getName());

    /** As fine as the database keeps it, so that what is answered at first is what is read later. */
    private static final Duration FINENESS = Duration.ofNanos(1_000);

    private final Clock clock = Clock.tick(startingAt(System.getProperty(START), Clock.systemUTC()), FINENESS);

    @Produces
    @Dependent
    Clock clock() {
        return new DemoClock(clock);
    }

    /** The machine's clock, put forward or back so that it says the start now; refuses a start that is no instant. */
    static Clock startingAt(@Nullable String start, Clock machine) {
        if (start == null || start.isBlank()) {
            return machine;
        }
        try {
            Instant first = Instant.parse(start);
            LOG.warning(() -> "The application's time begins at " + first + ", since " + START + " says so");
            return Clock.offset(machine, Duration.between(machine.instant(), first));
        } catch (DateTimeException e) {
            throw new IllegalArgumentException(START + " is no instant such as 2028-02-29T18:00:00Z: " + start, e);
        }
    }
}
