package eaveside.deploy;

import java.time.Duration;
import java.time.Instant;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.logging.Filter;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import java.util.logging.SimpleFormatter;
import org.jspecify.annotations.Nullable;

/**
 * Lets a fault into the log once a minute, with how often it has come since: what fails at every request must not push
 * everything else out of the log. Faults are alike that come from one place and differ in numbers and ids only.
 */
public final class RepeatedFaults implements Filter {
    static final Duration QUIET = Duration.ofMinutes(1);

    private static final int MOST = 500;

    private record Kind(@Nullable String logger, String what, String thrown) {}

    private static final class Seen {
        private Instant told;
        private long untold;

        private Seen(Instant told) {
            this.told = told;
        }
    }

    private final Map<Kind, Seen> seen = new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<Kind, Seen> eldest) {
            return size() > MOST;
        }
    };

    @Override
    public synchronized boolean isLoggable(LogRecord line) {
        if (line.getLevel().intValue() < Level.WARNING.intValue()) {
            return true;
        }
        Seen before = seen.get(kind(line));
        if (before == null) {
            seen.put(kind(line), new Seen(line.getInstant()));
            return true;
        }
        if (line.getInstant().isBefore(before.told.plus(QUIET))) {
            before.untold++;
            return false;
        }
        if (before.untold > 0) {
            String words = new SimpleFormatter().formatMessage(line);
            line.setMessage("{0} (and {1} more like it since {2})");
            line.setParameters(new Object[] {words, Long.toString(before.untold), before.told.toString()});
            line.setResourceBundle(null);
            line.setThrown(null);
        }
        before.told = line.getInstant();
        before.untold = 0;
        return true;
    }

    private static Kind kind(LogRecord line) {
        String message = line.getMessage() == null ? "" : line.getMessage();
        return new Kind(
                line.getLoggerName(), message.replaceAll("[0-9a-fA-F-]{8,}|\\d+", "#"), thrown(line.getThrown()));
    }

    /** What was thrown in the end, and where. */
    private static String thrown(@Nullable Throwable thrown) {
        if (thrown == null) {
            return "";
        }
        Throwable last = thrown;
        while (last.getCause() != null && last.getCause() != last) {
            last = last.getCause();
        }
        StackTraceElement[] at = last.getStackTrace();
        return last.getClass().getName() + (at.length == 0 ? "" : " at " + at[0]);
    }
}
