package eaveside.demo;

import java.time.Instant;

/** Sets the time that the use cases see while the demo's history is made. */
@FunctionalInterface
public interface DemoTime {
    void moveTo(Instant now);
}
