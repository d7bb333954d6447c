package eaveside.testing;

import eaveside.schema.Schema;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.FileSystem;
import java.nio.file.FileSystemException;
import java.nio.file.FileSystems;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.security.MessageDigest;
import java.security.NoSuchAlgorithmException;
import java.util.Comparator;
import java.util.HexFormat;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/**
 * The embedded server, started on a copy of a data directory that the first test run has prepared: making one anew and migrating
 * it takes ten times as long, and every module's tests would do it again. What was prepared for other migrations is not used.
 */
final class PreparedCluster {
    /** The migrated database that a prepared server has. */
    static final String TEMPLATE = "eaveside_template";

    private static final String PREFIX = "eaveside-test-postgres-";

    private PreparedCluster() {}

    /** Makes the template on a server that is there. */
    interface Maker {
        void make(String host, int port, String user, String password, String name);
    }

    static EmbeddedPostgres start(Maker maker) throws IOException {
        Path prepared = Path.of(System.getProperty("java.io.tmpdir")).resolve(PREFIX + key());
        if (!Files.isDirectory(prepared)) {
            prepare(prepared, maker);
        }
        Path data = folder();
        copy(prepared, data);
        EmbeddedPostgres postgres = on(data);
        Runtime.getRuntime().addShutdownHook(new Thread(() -> leave(postgres, data), "remove test data"));
        return postgres;
    }

    private static EmbeddedPostgres on(Path data) throws IOException {
        return EmbeddedPostgres.builder()
                .setDataDirectory(data)
                .setCleanDataDirectory(false)
                .setServerConfig("max_connections", "60")
                // A test server that loses power is started anew, so it need not write anything through.
                .setServerConfig("fsync", "off")
                .setServerConfig("full_page_writes", "off")
                .start();
    }

    /** Two may prepare at once; the second finds the first's, and throws its own away. */
    private static void prepare(Path prepared, Maker maker) throws IOException {
        Path data = folder();
        try (EmbeddedPostgres postgres = on(data)) {
            maker.make("localhost", postgres.getPort(), "postgres", "postgres", TEMPLATE);
        }
        try {
            Files.move(data, prepared, StandardCopyOption.ATOMIC_MOVE);
        } catch (AtomicMoveNotSupportedException e) {
            throw e;
        } catch (FileSystemException e) {
            remove(data);
            if (!Files.isDirectory(prepared)) {
                throw e;
            }
        }
    }

    private static Path folder() throws IOException {
        return Files.createTempDirectory(
                PREFIX, PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rwx------")));
    }

    /** Of the migrations and of the server's version, so that neither is mistaken for another. */
    private static String key() throws IOException {
        try {
            MessageDigest digest = MessageDigest.getInstance("SHA-256");
            digest.update(String.valueOf(EmbeddedPostgres.class
                            .getProtectionDomain()
                            .getCodeSource()
                            .getLocation())
                    .getBytes(StandardCharsets.UTF_8));
            URI classes = Schema.class
                    .getProtectionDomain()
                    .getCodeSource()
                    .getLocation()
                    .toURI();
            if (classes.getPath().endsWith(".jar")) {
                try (FileSystem jar = FileSystems.newFileSystem(URI.create("jar:" + classes), Map.of())) {
                    update(digest, jar.getPath("db", "migration"));
                }
            } else {
                update(digest, Path.of(classes).resolve("db").resolve("migration"));
            }
            return HexFormat.of().formatHex(digest.digest(), 0, 8);
        } catch (NoSuchAlgorithmException | URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private static void update(MessageDigest digest, Path migrations) throws IOException {
        List<Path> files;
        try (Stream<Path> found = Files.list(migrations)) {
            files = found.sorted(Comparator.comparing(file -> file.getFileName().toString()))
                    .toList();
        }
        if (files.isEmpty()) {
            throw new IllegalStateException("no migrations at " + migrations);
        }
        for (Path file : files) {
            digest.update(file.getFileName().toString().getBytes(StandardCharsets.UTF_8));
            try (InputStream content = Files.newInputStream(file)) {
                digest.update(content.readAllBytes());
            }
        }
    }

    private static void copy(Path from, Path to) throws IOException {
        try (Stream<Path> all = Files.walk(from)) {
            for (Path file : (Iterable<Path>) all::iterator) {
                Path target = to.resolve(from.relativize(file).toString());
                if (Files.isDirectory(file)) {
                    Files.createDirectories(target);
                } else {
                    Files.copy(file, target, StandardCopyOption.COPY_ATTRIBUTES);
                }
            }
        }
    }

    /** The server is stopped by a hook of its own at the same time, and writes until it is. */
    private static void leave(EmbeddedPostgres postgres, Path data) {
        try {
            postgres.close();
            for (int again = 0; again < 50 && Files.exists(data); again++) {
                remove(data);
                Thread.sleep(100);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
        }
    }

    private static void remove(Path folder) {
        try (Stream<Path> all = Files.walk(folder)) {
            all.sorted(Comparator.reverseOrder()).forEach(file -> {
                try {
                    Files.deleteIfExists(file);
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
        } catch (IOException | UncheckedIOException e) {
            // A temporary folder that stays is in nobody's way; the server may still be writing its last lines.
        }
    }
}
