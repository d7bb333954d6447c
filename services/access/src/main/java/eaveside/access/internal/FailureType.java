package eaveside.access.internal;

import java.time.Duration;

/**
 * What failed attempts are counted by, and how long the next attempt waits after so many: nothing for the first few
 * slips, then two seconds, doubled by each further failure up to a quarter of an hour. NIST SP 800-63B-4 §3.2.2 asks
 * for limits on consecutive failures and names growing waits as a means; the figures are common practice, no source.
 */
enum FailureType {
    /** Several people may share an address, so it bears more slips. */
    ADDRESS(10),
    USERNAME(3),
    /** A browser that the user has signed in with before: what is guessed elsewhere does not count against it. */
    BROWSER(3),
    /** A code after the right password: six digits, of which a few are right at a time. */
    CODE(5);

    static final Duration LONGEST = Duration.ofMinutes(15);
    private static final Duration SHORTEST = Duration.ofSeconds(2);
    private static final int DOUBLINGS = 16;

    private final int firstToWait;

    FailureType(int firstToWait) {
        this.firstToWait = firstToWait;
    }

    Duration waitAfter(int failures) {
        if (failures < firstToWait) {
            return Duration.ZERO;
        }
        Duration wait = SHORTEST.multipliedBy(1L << Math.min(failures - firstToWait, DOUBLINGS));
        return wait.compareTo(LONGEST) > 0 ? LONGEST : wait;
    }
}
