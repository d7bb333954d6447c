package eaveside.architecture.planted.ledger;

import eaveside.kernel.Decision;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.OffsetDateTime;
import java.time.YearMonth;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.time.ZonedDateTime;
import java.util.Calendar;
import java.util.Date;
import java.util.GregorianCalendar;
import java.util.function.Supplier;

/** Planted: every way to ask the machine for the time; the last one asks the clock that it is given. */
@Decision
public final class AsksTheMachine {
    public LocalDate day() {
        return LocalDate.now();
    }

    public LocalDate dayThere(ZoneId zone) {
        return LocalDate.now(zone);
    }

    public Supplier<Instant> byReference() {
        return Instant::now;
    }

    public LocalDateTime hour() {
        return LocalDateTime.now();
    }

    public ZonedDateTime zoned() {
        return ZonedDateTime.now();
    }

    public OffsetDateTime offset() {
        return OffsetDateTime.now(ZoneOffset.UTC);
    }

    public YearMonth month() {
        return YearMonth.now();
    }

    public Clock clock() {
        return Clock.systemUTC();
    }

    public Supplier<Clock> clockByReference() {
        return Clock::systemDefaultZone;
    }

    public Clock ticking(ZoneId zone) {
        return Clock.tickSeconds(zone);
    }

    public long millis() {
        return System.currentTimeMillis();
    }

    public Date date() {
        return new Date();
    }

    public Calendar calendar() {
        return Calendar.getInstance();
    }

    public Calendar gregorian() {
        return new GregorianCalendar();
    }

    public LocalDate right(Clock clock) {
        return LocalDate.now(Clock.tick(clock, Duration.ofMinutes(1)));
    }
}
