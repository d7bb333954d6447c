package eaveside.deploy;

import java.time.Duration;
import java.util.logging.Level;
import java.util.logging.Logger;

/**
 * Looks after the database and the server while they run. A database that has ended, or does not answer any more, is started
 * again in its place, so that the server's connections come back by themselves. A server that does not answer cannot be
 * mended from within: its process ends, with {@link #HUNG}, and {@code deploy/eaveside} starts it anew. A {@link Pulse} tells
 * that script that somebody still watches.
 */
final class Watch implements AutoCloseable {
    /** How the process ends so that it is started anew. */
    static final int HUNG = 75;

    private static final Logger LOG = Logger.getLogger(Watch.class.getName());
    private static final Duration STEP = Duration.ofSeconds(1);
    private static final Duration LONGEST_PAUSE = Duration.ofSeconds(30);

    /** A look at the process is cheap, a connection of its own less so. */
    private static final int STEPS_PER_QUESTION = 10;

    private static final int SILENCES_TO_END = 3;

    private final PostgresServer postgres;
    private final WebServer web;
    private final Pulse pulse = new Pulse();
    private final Thread thread;
    private volatile boolean closed;
    private int silences;
    private int silencesOfDatabase;

    Watch(PostgresServer postgres, WebServer web) {
        this.postgres = postgres;
        this.web = web;
        this.thread = Thread.ofPlatform().daemon().name("watch").start(this::run);
    }

    private void run() {
        for (long step = 1; pause(STEP); step++) {
            try {
                boolean asked = step % STEPS_PER_QUESTION == 0;
                if (asked) {
                    silencesOfDatabase = postgres.answers() ? 0 : silencesOfDatabase + 1;
                }
                if (!postgres.lives() || silencesOfDatabase >= SILENCES_TO_END) {
                    startAgain();
                    silencesOfDatabase = 0;
                }
                if (asked) {
                    look();
                }
            } catch (RuntimeException | Error e) { // whatever it is: without this thread nobody watches
                LOG.log(Level.WARNING, "watching failed; it goes on", e);
            }
        }
    }

    private void startAgain() {
        Duration wait = STEP;
        for (int attempt = 1; !closed; attempt++) {
            LOG.warning("PostgreSQL has ended or does not answer; it is started again, attempt " + attempt);
            if (postgres.startAgain()) {
                LOG.warning("PostgreSQL is back");
                return;
            }
            pause(wait);
            look();
            wait = wait.multipliedBy(2).compareTo(LONGEST_PAUSE) < 0 ? wait.multipliedBy(2) : LONGEST_PAUSE;
        }
    }

    /** Any answer is one: also that the database is not there, or that there is too much to do. */
    private void look() {
        silences = web.answers() ? 0 : silences + 1;
        if (silences >= SILENCES_TO_END && !closed) {
            LOG.severe("The server has not answered " + silences + " times; its process ends and is started anew");
            Runtime.getRuntime().halt(HUNG);
        }
    }

    /** False once there is nothing to watch any more. */
    private boolean pause(Duration time) {
        try {
            Thread.sleep(time);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            return false;
        }
        return !closed;
    }

    /** Before what it watches is stopped on purpose. */
    @Override
    public void close() {
        closed = true;
        pulse.close();
        thread.interrupt();
        try {
            thread.join(Duration.ofSeconds(10));
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }
}
