package eaveside.web.entrance;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Arrays;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.logging.Logger;
import java.util.stream.Collectors;

/**
 * Ends requests that hang: what waits is interrupted, and the log has where it was. Statements that the database works on are
 * ended by the database itself, somewhat earlier.
 */
@ApplicationScoped
public class Deadlines {
    /** Longer than any request takes on books of a hundred thousand invoices, by far. */
    static final Duration LONGEST = Duration.ofSeconds(90);

    private static final Logger LOG = Logger.getLogger(Deadlines.class.getName());

    private final Map<Thread, Long> working = new ConcurrentHashMap<>();

    void begins() {
        working.put(Thread.currentThread(), System.nanoTime());
    }

    /** Also takes back an interruption that came too late. */
    void ends() {
        working.remove(Thread.currentThread());
        Thread.interrupted();
    }

    void sweep() {
        long now = System.nanoTime();
        working.forEach((thread, since) -> {
            if (now - since > LONGEST.toNanos()) {
                String at = Arrays.stream(thread.getStackTrace())
                        .limit(12)
                        .map(StackTraceElement::toString)
                        .collect(Collectors.joining(" < "));
                LOG.warning(() -> "A request takes longer than " + LONGEST.toSeconds() + " s and is ended, at " + at);
                working.put(thread, now); // once more after as long, should it not heed
                thread.interrupt();
            }
        });
    }
}
