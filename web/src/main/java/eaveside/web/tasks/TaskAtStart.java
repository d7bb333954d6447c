package eaveside.web.tasks;

import eaveside.kernel.Refusal;
import jakarta.enterprise.context.Dependent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.event.Startup;
import jakarta.inject.Inject;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.Optional;
import java.util.Properties;
import java.util.logging.Level;
import java.util.logging.Logger;
import org.eclipse.microprofile.config.inject.ConfigProperty;

/** Takes the task out of the file that the setting {@code eaveside.task} names, if there is one, and answers it. */
@Dependent
public class TaskAtStart {
    private static final Logger LOG = Logger.getLogger(TaskAtStart.class.getName());

    @Inject
    @ConfigProperty(name = "eaveside.task")
    Optional<String> file;

    @Inject
    Tasks tasks;

    void run(@Observes Startup event) throws IOException {
        if (file.isPresent() && Files.exists(Path.of(file.get()))) {
            var path = Path.of(file.get());
            var task = take(path);
            answer(path.resolveSibling(path.getFileName() + ".answer"), outcome(task));
        }
    }

    private static Properties take(Path path) throws IOException {
        var task = new Properties();
        try (var reader = Files.newBufferedReader(path)) {
            task.load(reader);
        }
        // It may hold a password.
        Files.delete(path);
        return task;
    }

    /** The first line says ok or no, the rest is for the person at the terminal. */
    private String outcome(Properties task) {
        try {
            return "ok\n" + tasks.perform(task);
        } catch (Refusal refusal) {
            return "no\n" + refusal.text();
        } catch (RuntimeException e) {
            // Such a fault must not keep the application from starting.
            LOG.log(Level.SEVERE, e, () -> "Task " + task.getProperty("task"));
            return "no\nan unexpected fault; the server's log tells more";
        }
    }

    private static void answer(Path path, String text) throws IOException {
        var unfinished = path.resolveSibling(path.getFileName() + ".unfinished");
        Files.deleteIfExists(unfinished);
        Files.createFile(
                unfinished, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
        Files.writeString(unfinished, text);
        Files.move(unfinished, path, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
    }
}
