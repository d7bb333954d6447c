package eaveside.web;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.inject.Produces;
import java.time.Clock;

/** The one place where the running application asks the machine for the time. */
@ApplicationScoped
public class ClockProducer {
    @Produces
    @Dependent
    Clock clock() {
        return Clock.systemUTC();
    }
}
