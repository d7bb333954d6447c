package eaveside.demo;

import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * What happens when. Each event may note later ones; those that lie beyond the present never come about.
 */
final class Agenda {
    private final ZoneId zone;
    private final Instant present;
    private final PriorityQueue<Event> events =
            new PriorityQueue<>(Comparator.comparing(Event::at).thenComparing(Event::order));
    private int noted;

    Agenda(ZoneId zone, Instant present) {
        this.zone = zone;
        this.present = present;
    }

    /** @param order of noting, which decides between events of one moment */
    private record Event(Instant at, int order, Runnable what) {}

    void note(LocalDate day, LocalTime time, Runnable what) {
        events.add(new Event(day.atTime(time).atZone(zone).toInstant(), noted++, what));
    }

    void note(LocalDate day, int hour, Runnable what) {
        note(day, LocalTime.of(hour, 0), what);
    }

    LocalDate today() {
        return present.atZone(zone).toLocalDate();
    }

    /** Lets everything up to the present happen, each at its time, and ends at the present. */
    void run(DemoTime time) {
        while (!events.isEmpty() && !events.peek().at().isAfter(present)) {
            Event event = events.remove();
            time.moveTo(event.at());
            event.what().run();
        }
        time.moveTo(present);
    }
}
