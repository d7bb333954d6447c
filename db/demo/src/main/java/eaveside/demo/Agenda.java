package eaveside.demo;

import java.time.DayOfWeek;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalTime;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.PriorityQueue;

/**
 * What happens when. Each event may note later ones; those before the first day or beyond the present never come about.
 */
final class Agenda {
    private final ZoneId zone;
    private final LocalDate from;
    private final Instant present;
    private final PriorityQueue<Event> events =
            new PriorityQueue<>(Comparator.comparing(Event::at).thenComparing(Event::order));
    private Instant now = Instant.MIN;
    private int noted;

    Agenda(ZoneId zone, LocalDate from, Instant present) {
        this.zone = zone;
        this.from = from;
        this.present = present;
    }

    /** @param  order of noting, which decides between events of one moment */
    private record Event(Instant at, int order, Runnable what) {}

    void note(LocalDate day, LocalTime time, Runnable what) {
        if (!day.isBefore(from)) {
            events.add(new Event(day.atTime(time).atZone(zone).toInstant(), noted++, what));
        }
    }

    /** So many working days after the day of the event that runs, in the given hour; the minutes vary. */
    void noteAfter(int workdays, int hour, Runnable what) {
        note(workdayAfter(day(), workdays), LocalTime.of(hour, noted % 50), what);
    }

    /** The day of the real clock. */
    LocalDate today() {
        return present.atZone(zone).toLocalDate();
    }

    /** The day of the event that runs. */
    LocalDate day() {
        return now.atZone(zone).toLocalDate();
    }

    /** Monday to Friday; today counts too, so that there is always something to look at. */
    boolean isWorkday(LocalDate day) {
        boolean weekend = day.getDayOfWeek() == DayOfWeek.SATURDAY || day.getDayOfWeek() == DayOfWeek.SUNDAY;
        return !weekend || day.equals(today());
    }

    LocalDate workdayAfter(LocalDate day, int count) {
        LocalDate found = day;
        for (int left = count; left > 0; left -= isWorkday(found) ? 1 : 0) {
            found = found.plusDays(1);
        }
        return found;
    }

    LocalDate workdayBefore(LocalDate day, int count) {
        LocalDate found = day;
        for (int left = count; left > 0; left -= isWorkday(found) ? 1 : 0) {
            found = found.minusDays(1);
        }
        return found;
    }

    /** Lets everything up to the present happen, each at its time, and ends at the present. */
    void run(DemoTime time) {
        while (!events.isEmpty() && !events.peek().at().isAfter(present)) {
            Event event = events.remove();
            now = event.at();
            time.moveTo(now);
            event.what().run();
        }
        time.moveTo(present);
    }
}
