package eaveside.deploy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Shows {@code deploy/eaveside} that this process lives: a file whose content changes while it does. A process that hangs as a
 * whole, stopped or choked for memory, can do nothing about itself.
 */
final class Pulse {
    /** Names the file; nobody looks at a process that has none. */
    private static final String SETTING = "eaveside.pulse";

    private static final Logger LOG = Logger.getLogger(Pulse.class.getName());

    private final @Nullable Path file;
    private long beats;

    Pulse() {
        String named = System.getProperty(SETTING);
        this.file = named == null ? null : Path.of(named);
    }

    void beat() {
        write(Long.toString(++beats));
    }

    /** From here on the process takes the time that it needs to stop. */
    void rest() {
        write("");
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
