package eaveside.deploy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Shows {@code deploy/eaveside} that this process lives: a file whose content changes while it does. A process that hangs as a
 * whole, stopped or choked for memory, can do nothing about itself. A thread of its own, since what the others do may take minutes.
 */
final class Pulse implements AutoCloseable {
    /** Names the file; nobody looks at a process that has none. */
    private static final String SETTING = "eaveside.pulse";

    private static final Logger LOG = Logger.getLogger(Pulse.class.getName());
    private static final Duration PAUSE = Duration.ofSeconds(10);

    private final @Nullable Path file;
    private final Thread thread;

    Pulse() {
        String named = System.getProperty(SETTING);
        this.file = named == null ? null : Path.of(named);
        this.thread = Thread.ofPlatform().daemon().name("pulse").start(this::run);
    }

    private void run() {
        for (long beats = 1; file != null; beats++) {
            write(Long.toString(beats));
            try {
                Thread.sleep(PAUSE);
            } catch (InterruptedException e) {
                break;
            }
        }
        // From here on the process takes the time that it needs to stop.
        write("");
    }

    @Override
    public void close() {
        thread.interrupt();
    }

    private void write(String content) {
        if (file == null) {
            return;
        }
        try {
            Files.writeString(file, content);
        } catch (IOException e) {
            LOG.log(Level.WARNING, "the pulse cannot be written to " + file, e);
        }
    }
}
