package eaveside.deploy;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Map;
import java.util.Properties;

/**
 * Something the application is asked to do as it starts, handed over in a file that only its owner can read, and
 * answered in a file beside it.
 *
 * @param  file where the task is left
 */
record Task(Path file) {
    /** The setting that tells the application where the task is. */
    static final String SETTING = "eaveside.task";

    /**
     * Leaves a task in the data folder.
     *
     * @param  values its name under {@code task}, and what it needs
     */
    static Task leave(DataFolder folder, Map<String, String> values) {
        var properties = new Properties();
        properties.putAll(values);
        try {
            var file = Files.createTempFile(
                    folder.root(),
                    "task",
                    ".properties",
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            try (var writer = Files.newBufferedWriter(file)) {
                properties.store(writer, null);
            }
            return new Task(file);
        } catch (IOException e) {
            throw new Failure("Cannot write to the data folder " + folder.root() + ": " + e.getMessage(), e);
        }
    }

    /** Removes what commands that were killed have left in the folder: it may hold a password. */
    static void forgetAll(DataFolder folder) {
        try (var files = Files.newDirectoryStream(folder.root(), "task*.properties*")) {
            for (var file : files) {
                Files.deleteIfExists(file);
            }
        } catch (IOException e) {
            throw new Failure("Cannot tidy up the data folder " + folder.root() + ": " + e.getMessage(), e);
        }
    }

    /** What the application answered, after it has started; a refusal becomes the command's failure. */
    String answer() {
        var answer = file.resolveSibling(file.getFileName() + ".answer");
        try {
            var text = Files.readString(answer).split("\n", 2);
            Files.delete(answer);
            if (!text[0].equals("ok")) {
                throw new Failure(text[1].strip());
            }
            return text[1].strip();
        } catch (IOException e) {
            throw new Failure("The application left no answer; see the server's log", e);
        } finally {
            forget();
        }
    }

    /** Removes the task if the application never took it: it may hold a password. */
    void forget() {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            throw new Failure("Cannot delete " + file + ": " + e.getMessage(), e);
        }
    }
}
