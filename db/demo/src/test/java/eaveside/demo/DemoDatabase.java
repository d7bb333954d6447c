package eaveside.demo;

import eaveside.testing.Bench;
import eaveside.testing.MovableClock;
import java.time.Duration;

/** How tests drive the demo's time. */
final class DemoDatabase {
    private DemoDatabase() {}

    static DemoTime timeOf(Bench bench) {
        MovableClock clock = bench.clock();
        return now -> clock.forward(Duration.between(clock.instant(), now));
    }
}
