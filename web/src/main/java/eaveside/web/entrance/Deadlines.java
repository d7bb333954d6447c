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
    private final Duration longest;

    public Deadlines() {
        this(LONGEST);
    }

    Deadlines(Duration longest) {
        this.longest = longest;
    }

    void begins() {
        working.put(Thread.currentThread(), System.nanoTime());
    }

    /** Also takes back an interruption that came too late. */
    void ends() {
        working.remove(Thread.currentThread());
        Thread.interrupted();
    }

    /** A request that ends meanwhile waits for this and then takes back the interruption: its thread is another request's soon. */
    void sweep() {
        for (Thread request : working.keySet()) {
            working.computeIfPresent(request, this::looked);
        }
    }

    private long looked(Thread request, long since) {
        long now = System.nanoTime();
        if (now - since <= longest.toNanos()) {
            return since;
        }
        String at = Arrays.stream(request.getStackTrace())
                .limit(12)
                .map(StackTraceElement::toString)
                .collect(Collectors.joining(" < "));
        LOG.warning(() -> "A request takes longer than " + longest.toSeconds() + " s and is ended, at " + at);
        request.interrupt();
        return now; // once more after as long, should it not heed
    }
}
