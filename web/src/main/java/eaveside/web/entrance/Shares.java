package eaveside.web.entrance;

import eaveside.kernel.Places;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import org.jspecify.annotations.Nullable;

/**
 * How many requests are worked on at a time, so that no caller takes all threads of the server. Whoever has shown nothing that
 * lets them in shares a fifth of them with all others like that, and no network has more than a quarter of those; whoever is in
 * has a share of their own. What the server itself has is 200 threads (its default).
 */
@ApplicationScoped
public class Shares {
    static final int OF_STRANGERS = 40;
    static final int OF_ONE_NETWORK = 10;
    static final int OF_ONE_CALLER = 16;
    static final int OF_ALL_CALLERS = 150;

    /** Of bodies that are worked on at the same time, in megabytes together: what is made of one takes many times its size. */
    static final int OF_BODIES = 13;

    /** Large ones of one caller, worked on or waiting. */
    static final int BODIES_OF_ONE_CALLER = 4;

    static final int OF_A_LARGE_BODY = 250_000;
    private static final Duration PATIENCE = Duration.ofSeconds(30);

    private static final int REMEMBERED = 10_000;

    private final Semaphore strangers = new Semaphore(OF_STRANGERS);
    private final Semaphore callers = new Semaphore(OF_ALL_CALLERS);
    private final Semaphore bodies = new Semaphore(OF_BODIES, true);
    private final Places busy = new Places();

    /** Whom what was shown let in lately, by its hash; the one used least lately is forgotten first. */
    private final Map<String, String> known = Collections.synchronizedMap(new LinkedHashMap<>(16, 0.75f, true) {
        private static final long serialVersionUID = 1;

        @Override
        protected boolean removeEldestEntry(Map.Entry<String, String> eldest) {
            return size() > REMEMBERED;
        }
    });

    /** How somebody came in: what a script's token and half a sign-in take is not taken from whoever is in as a whole. */
    public enum Way {
        SESSION,
        HALF,
        SCRIPT
    }

    /** A place, to be given back. */
    interface Place extends AutoCloseable {
        @Override
        void close();
    }

    /**
     * @param  credential what a request showed, hashed, and let somebody in
     * @param  user       who has one share for all that lets them in the same way
     */
    public void admitted(String credential, UserId user, Way way) {
        known.put(credential, way + " of " + user);
    }

    /** It lets nobody in any more. */
    public void ended(String credential) {
        known.remove(credential);
    }

    /**
     * A place for a request; null where its caller's share is taken up.
     *
     * @param  network that it comes from, by which strangers are told apart
     */
    @Nullable
    Place place(@Nullable String credential, String network) {
        String caller = callerOf(credential);
        return caller == null ? place(network, OF_ONE_NETWORK, strangers) : place(caller, OF_ONE_CALLER, callers);
    }

    /**
     * Room for what is made of a body. Those who are in wait for it in turn, a few of each caller; strangers have it only where nobody waits. Null where there is
     * none.
     *
     * @param  bytes its size, at most {@link Sizes#OF_FILES}
     */
    @Nullable
    Place room(@Nullable String credential, int bytes) {
        if (bytes < OF_A_LARGE_BODY) {
            return () -> {};
        }
        int megabytes = bytes / 1_000_000 + 1;
        String user = callerOf(credential);
        if (user == null) {
            return has(megabytes, Duration.ZERO) ? () -> bodies.release(megabytes) : null;
        }
        String caller = "bodies of " + user;
        if (!busy.enters(caller, BODIES_OF_ONE_CALLER)) {
            return null;
        }
        if (!has(megabytes, PATIENCE)) {
            busy.leaves(caller);
            return null;
        }
        return () -> {
            bodies.release(megabytes);
            busy.leaves(caller);
        };
    }

    /** Without a time to wait it would pass those who wait already. */
    private boolean has(int megabytes, Duration patience) {
        try {
            return bodies.tryAcquire(megabytes, patience.toSeconds(), TimeUnit.SECONDS);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
    }

    private @Nullable String callerOf(@Nullable String credential) {
        return credential == null ? null : known.get(credential);
    }

    private @Nullable Place place(String caller, int most, Semaphore all) {
        if (!busy.enters(caller, most)) {
            return null;
        }
        if (!all.tryAcquire()) {
            busy.leaves(caller);
            return null;
        }
        return () -> {
            all.release();
            busy.leaves(caller);
        };
    }
}
