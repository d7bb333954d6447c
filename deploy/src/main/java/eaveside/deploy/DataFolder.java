package eaveside.deploy;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.channels.FileChannel;
import java.nio.channels.FileLock;
import java.nio.channels.OverlappingFileLockException;
import java.nio.charset.StandardCharsets;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.NoSuchFileException;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.BasicFileAttributes;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.SecureRandom;
import java.util.Base64;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CopyOnWriteArrayList;
import org.jspecify.annotations.Nullable;

/**
 * The folder that holds one company: the database, its passwords, the logs and the server's working files. Everything
 * in it is readable by its owner only. One process uses it at a time.
 */
final class DataFolder {
    /** In bytes. */
    static final long LARGE_LOG = 5_000_000;

    /**
     * The locks of this process. A channel that nothing points at is closed when the garbage collector finds it, and its
     * lock with it: a second process would then take the folder of a running one for free.
     */
    private static final List<FileChannel> HELD = new CopyOnWriteArrayList<>();

    /** What is in a data folder sooner or later. */
    private static final Set<String> OWN = Set.of(
            "postgres",
            "postgres.unfinished",
            "secrets",
            "lock",
            "log",
            "server",
            "demo-usernames.txt",
            "demo-unfinished",
            "lost+found"); // of a file system of its own

    private static final int PASSWORD_BYTES = 24;

    private final Path root;

    private DataFolder(Path root) {
        this.root = root;
    }

    /** Opens the folder and makes it when it is missing. */
    static DataFolder open(Path path) {
        var root = path.toAbsolutePath().normalize();
        if (Files.exists(root) && !Files.isDirectory(root)) {
            throw new Failure("The data folder " + root + " is a file");
        }
        try {
            Files.createDirectories(root);
        } catch (IOException e) {
            throw new Failure("Cannot make the data folder " + root + ": " + e.getMessage(), e);
        }
        if (!Files.isWritable(root) || !Files.isReadable(root)) {
            throw new Failure("Cannot write to the data folder " + root + ": it belongs to another user");
        }
        var folder = new DataFolder(root);
        folder.close();
        return folder;
    }

    /** Closes the folder to everybody but its owner, where it was made with other rights. A folder of other things is refused. */
    private void close() {
        try (var files = Files.list(root)) {
            var names = files.map(file -> file.getFileName().toString()).toList();
            boolean isOurs = names.containsAll(List.of("secrets", "postgres"));
            if (!isOurs && !OWN.containsAll(names)) {
                throw new Failure("The folder " + root + " holds other things: choose an empty one for the data");
            }
            Files.setPosixFilePermissions(root, PosixFilePermissions.fromString("rwx------"));
        } catch (IOException e) {
            throw new Failure("Cannot close the data folder " + root + " to others: " + e.getMessage(), e);
        }
    }

    Path root() {
        return root;
    }

    Path postgres() {
        return root.resolve("postgres");
    }

    /** The server's working files; nothing in it outlives a start. */
    Path server() {
        return root.resolve("server");
    }

    Path logs() {
        return root.resolve("log");
    }

    /** Where the application leaves the demo's usernames for the launcher to print. */
    Path demoUsernames() {
        return root.resolve("demo-usernames.txt");
    }

    /** Says, by being there, that the demo company was begun and not finished: the database holds nothing worth keeping. */
    Path demoUnfinished() {
        return root.resolve("demo-unfinished");
    }

    boolean hasDatabase() {
        return Files.exists(postgres().resolve("PG_VERSION"));
    }

    /** The password of that name, made at random on first use. */
    String password(String name) {
        try {
            var folder = Files.createDirectories(
                    root.resolve("secrets"),
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
            var file = folder.resolve(name);
            if (!Files.exists(file)) {
                var random = new byte[PASSWORD_BYTES];
                new SecureRandom().nextBytes(random);
                Files.createFile(
                        file, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
                Files.writeString(file, Base64.getUrlEncoder().withoutPadding().encodeToString(random));
            }
            return Files.readString(file);
        } catch (IOException e) {
            throw new Failure("Cannot read the passwords in " + root + ": " + e.getMessage(), e);
        }
    }

    /**
     * Takes the folder for this process, until it ends; the system frees it even after a kill.
     *
     * @param  remark what a second process is told about the holder, such as its address
     */
    void lock(String remark) {
        if (!tryLock(remark)) {
            throw new Failure("The data folder " + root + " is in use by a running Eaveside (" + holder() + ")");
        }
    }

    /** Waits until no other process is at a task in the folder: they share what they work in. Held until the process ends. */
    void awaitTurn() {
        try {
            @SuppressWarnings("resource")
            var channel =
                    FileChannel.open(root.resolve("task.lock"), StandardOpenOption.CREATE, StandardOpenOption.WRITE);
            channel.lock();
            HELD.add(channel);
        } catch (OverlappingFileLockException e) {
            // It is this process's turn already.
        } catch (IOException e) {
            throw new Failure("Cannot lock the data folder " + root + ": " + e.getMessage(), e);
        }
    }

    /** A log that has grown large makes room for a new one; of those before it, one is kept. */
    static void putAside(Path log) {
        try {
            if (Files.exists(log) && Files.size(log) > LARGE_LOG) {
                Files.move(log, log.resolveSibling(log.getFileName() + ".1"), StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (NoSuchFileException e) {
            // Another has just done so.
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** Takes the folder if nobody holds it. */
    boolean tryLock(String remark) {
        try {
            @SuppressWarnings("resource") // Held until the process ends.
            var channel = FileChannel.open(
                    root.resolve("lock"), StandardOpenOption.CREATE, StandardOpenOption.READ, StandardOpenOption.WRITE);
            @Nullable FileLock lock = channel.tryLock();
            if (lock == null) {
                channel.close();
                return false;
            }
            HELD.add(channel);
            channel.truncate(0);
            channel.write(StandardCharsets.UTF_8.encode(
                    "process " + ProcessHandle.current().pid() + ", " + remark));
            return true;
        } catch (IOException e) {
            throw new Failure("Cannot lock the data folder " + root + ": " + e.getMessage(), e);
        }
    }

    private String holder() {
        try {
            return Files.readString(root.resolve("lock"));
        } catch (IOException e) {
            return "holder unknown";
        }
    }

    /** Makes an empty folder of that path, whatever a killed process left in it. */
    static Path fresh(Path folder) {
        try {
            delete(folder);
            return Files.createDirectories(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    static void delete(Path folder) throws IOException {
        if (!Files.exists(folder)) {
            return;
        }
        Files.walkFileTree(folder, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.delete(file);
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult postVisitDirectory(Path directory, @Nullable IOException failure)
                    throws IOException {
                if (failure != null) {
                    throw failure;
                }
                Files.delete(directory);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
