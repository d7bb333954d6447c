package eaveside.web;

import eaveside.demo.DemoClock;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.inject.Produces;
import java.time.Clock;

/** The one place where the running application asks the machine for the time; only the demo's history has its own. */
@ApplicationScoped
public class ClockProducer {
    @Produces
    @Dependent
    Clock clock() {
        return new DemoClock(Clock.systemUTC());
    }
}
