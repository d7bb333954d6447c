package eaveside.deploy;

import java.io.IOException;
import java.nio.file.FileVisitResult;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.SimpleFileVisitor;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.BasicFileAttributes;

/**
 * What {@link Preparation} makes once per build: the unpacked server, the application without the libraries that went
 * to the server's class path, PostgreSQL's programs, and the Java options with the class cache.
 *
 * @param  home the folder that holds it
 */
record PreparedServer(Path home) {
    /** The one that this process was started from. */
    static PreparedServer current() {
        var home = System.getProperty("eaveside.home");
        if (home == null) {
            throw new Failure("Start Eaveside by deploy/eaveside");
        }
        return new PreparedServer(Path.of(home));
    }

    Path payara() {
        return home.resolve("payara");
    }

    Path bootJar() {
        return payara().resolve("launch-micro.jar");
    }

    Path libraries() {
        return home.resolve("lib");
    }

    Path application() {
        return home.resolve("eaveside");
    }

    Path postgres() {
        return home.resolve("postgres");
    }

    Path options() {
        return home.resolve("java.options");
    }

    Path classCache() {
        return home.resolve("classes.aot");
    }

    /** Copies the server's own settings; it writes into them, so that every start needs a clean copy. */
    void copyConfiguration(Path target) throws IOException {
        for (var part : new String[] {"config", "lib"}) {
            copy(payara().resolve(part), target.resolve(part));
        }
    }

    private static void copy(Path source, Path target) throws IOException {
        Files.walkFileTree(source, new SimpleFileVisitor<>() {
            @Override
            public FileVisitResult preVisitDirectory(Path directory, BasicFileAttributes attributes)
                    throws IOException {
                Files.createDirectories(
                        target.resolve(source.relativize(directory).toString()));
                return FileVisitResult.CONTINUE;
            }

            @Override
            public FileVisitResult visitFile(Path file, BasicFileAttributes attributes) throws IOException {
                Files.copy(
                        file, target.resolve(source.relativize(file).toString()), StandardCopyOption.COPY_ATTRIBUTES);
                return FileVisitResult.CONTINUE;
            }
        });
    }
}
