package eaveside.deploy;

import eaveside.schema.BooksProof;
import eaveside.schema.Schema;
import java.io.IOException;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardOpenOption;
import java.nio.file.attribute.PosixFilePermissions;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.CountDownLatch;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;

/** The command line behind {@code deploy/eaveside}. */
@Command(
        name = "eaveside",
        description = "The back office of a small exterior-cleaning company.",
        mixinStandardHelpOptions = true,
        scope = CommandLine.ScopeType.INHERIT,
        subcommands = {
            Launcher.Demo.class,
            Launcher.Start.class,
            Launcher.Verify.class,
            Launcher.Token.class,
            Launcher.Recover.class,
            Launcher.Migrate.class,
            Launcher.Prepare.class,
            Launcher.Train.class
        })
final class Launcher {
    /** What the person at the terminal reads; the servers' own chatter goes to files in the data folder. */
    private static final PrintStream TERMINAL = System.out;

    private static final PrintStream COMPLAINTS = System.err;

    /** Such as "Step 3 of 3", where what had to be built and prepared first was said in steps; empty otherwise. */
    private static final String STEP = System.getProperty("eaveside.step", "");

    private Launcher() {}

    public static void main(String[] arguments) {
        int code = new CommandLine(new Launcher())
                .setExecutionExceptionHandler((exception, command, result) -> {
                    if (exception instanceof Failure failure) {
                        COMPLAINTS.println("eaveside: " + failure.getMessage());
                    } else {
                        exception.printStackTrace(COMPLAINTS);
                    }
                    return CommandLine.ExitCode.SOFTWARE;
                })
                .execute(arguments);
        TERMINAL.flush();
        // The server's threads would keep the process alive.
        System.exit(code);
    }

    /** Options of the commands that work on a data folder. */
    abstract static class OnData implements Callable<Integer> {
        @Option(
                names = "--data",
                paramLabel = "DIR",
                description = "data folder (default: .data/demo of the project for demo, .data/company otherwise)")
        @Nullable
        Path data;

        DataFolder folder() {
            var folder = DataFolder.open(path());
            divertChatter(folder);
            return folder;
        }

        /** For what makes no company. */
        DataFolder present() {
            if (!Files.isDirectory(path())) {
                throw new Failure("There is no data folder " + path());
            }
            return folder();
        }

        Path path() {
            if (data != null && data.toString().isBlank()) {
                throw new Failure("--data takes a folder");
            }
            return data != null ? data : defaultData();
        }

        Path defaultData() {
            return project().resolve(".data/company");
        }

        static Path project() {
            return Path.of(System.getProperty("eaveside.project", "."));
        }
    }

    /** What the two commands that serve have in common. */
    abstract static class Serving extends OnData {
        @Option(names = "--port", defaultValue = "8080", description = "port to listen on (default: ${DEFAULT-VALUE})")
        int port;

        @Option(
                names = "--bind",
                paramLabel = "ADDRESS",
                defaultValue = "127.0.0.1",
                description = "address to listen on (default: ${DEFAULT-VALUE}, this machine only)")
        String bind = "127.0.0.1";

        @Option(
                names = "--proxy",
                paramLabel = "ADDRESS",
                split = ",",
                description =
                        "address or network of a TLS proxy before Eaveside: what it says in X-Forwarded-For and"
                                + " X-Forwarded-Proto and X-Forwarded-Host is believed, and nobody else's word. May be given several times")
        List<String> proxies = List.of();

        @Option(
                names = "--no-second-factor",
                description = "lets owners sign in with a password alone on an address that others can reach")
        boolean noSecondFactor;

        /** What the application is told beside its database. */
        Map<String, String> settings() {
            proxies.forEach(Serving::requireAddress);
            return Map.of("eaveside.proxies", String.join(",", proxies), "eaveside.second-factor", secondFactor());
        }

        private void requirePort() {
            if (port < 1 || port > 65_535) {
                throw new Failure("--port takes 1 to 65535, not " + port);
            }
        }

        /** Once it is known to be one of ours, and before anything is written. */
        @Override
        DataFolder folder() {
            DataFolder.putAside(DataFolder.open(path()).logs().resolve("console.log"));
            return super.folder();
        }

        private void requireOfThisMachine() {
            try {
                WebServer.listenOnce(bind, 0);
            } catch (IOException e) {
                throw new Failure(
                        "--bind takes an address of this machine such as 127.0.0.1 or 0.0.0.0, not '" + bind + "'", e);
            }
        }

        /** The application reads the list once more; here it is said in time to whoever has typed it. */
        private static void requireAddress(String proxy) {
            String[] parts = proxy.split("/", 2);
            try {
                int bits = InetAddress.ofLiteral(parts[0]).getAddress().length * 8;
                if (parts.length > 1 && (!parts[1].matches("\\d{1,3}") || Integer.parseInt(parts[1]) > bits)) {
                    throw new IllegalArgumentException("too long");
                }
            } catch (IllegalArgumentException e) {
                throw new Failure(
                        "--proxy takes addresses and networks such as 127.0.0.1 or 10.0.0.0/8, not '" + proxy + "'");
            }
        }

        /** Owners need one where others can reach the address. */
        private String secondFactor() {
            if (proxies.isEmpty() && WebServer.isLoopback(bind)) {
                return "local";
            }
            if (noSecondFactor) {
                TERMINAL.println("Owners sign in with a password alone, though others can reach this address:"
                        + " --no-second-factor is kept on the audit log");
            }
            return noSecondFactor ? "off" : "owners";
        }

        /** What is said of the step that makes a company where there is none yet. */
        String firstWords() {
            return "";
        }

        /** What the application is asked to do when there is no company yet. */
        abstract Map<String, String> first(DataFolder folder);

        abstract void told(DataFolder folder, String answer) throws IOException;

        @Override
        public Integer call() throws IOException {
            requirePort();
            requireOfThisMachine();
            var settings = settings();
            var folder = folder();
            long begun = System.nanoTime();
            if (!STEP.isEmpty()) {
                TERMINAL.println(STEP + ": starting" + (folder.hasDatabase() ? "" : firstWords()));
                TERMINAL.flush();
            }
            var company = Company.start(folder, bind, port, settings, this::first, answer -> {
                try {
                    told(folder, answer);
                    return null;
                } catch (IOException e) {
                    throw new UncheckedIOException(e);
                }
            });
            if (!STEP.isEmpty()) {
                TERMINAL.println("  done in "
                        + Duration.ofNanos(System.nanoTime() - begun).toSeconds() + " s");
            }
            TERMINAL.println("Eaveside is ready at " + company.address() + "  (Ctrl-C stops it)");
            if (Files.exists(folder.demoUsernames())) {
                TERMINAL.println(Files.readString(folder.demoUsernames()));
            }
            TERMINAL.flush();
            try {
                new CountDownLatch(1).await();
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
            }
            return CommandLine.ExitCode.OK;
        }
    }

    @Command(name = "demo", description = "Starts with an invented company to try things out.")
    static final class Demo extends Serving {
        private static final String DEMO_WORDS = " three months of business, under a minute";

        @Override
        String firstWords() {
            return ", and making the demo company:" + DEMO_WORDS;
        }

        @Override
        Map<String, String> first(DataFolder folder) {
            if (STEP.isEmpty()) {
                TERMINAL.println("Making the demo company, once:" + DEMO_WORDS);
                TERMINAL.flush();
            }
            try {
                Files.deleteIfExists(folder.demoUsernames());
                Files.createFile(folder.demoUnfinished());
            } catch (IOException e) {
                throw new Failure("Cannot write to the data folder " + folder.root() + ": " + e.getMessage(), e);
            }
            return Map.of("task", "demo");
        }

        @Override
        void told(DataFolder folder, String answer) throws IOException {
            Files.createFile(
                    folder.demoUsernames(),
                    PosixFilePermissions.asFileAttribute(PosixFilePermissions.fromString("rw-------")));
            Files.writeString(folder.demoUsernames(), "Demo usernames, made up for this data folder:\n" + answer);
            Files.delete(folder.demoUnfinished());
        }

        @Override
        Path defaultData() {
            return project().resolve(".data/demo");
        }
    }

    @Command(
            name = "start",
            description = "Starts with the company in the data folder; asks for it when there is none.")
    static final class Start extends Serving {
        @Override
        Map<String, String> first(DataFolder folder) {
            return new Questions(TERMINAL).found();
        }

        @Override
        void told(DataFolder folder, String answer) {
            TERMINAL.println(answer);
        }
    }

    @Command(name = "token", description = "Makes a bearer token for a script, shown once.")
    static final class Token extends OnData {
        @Option(names = "--username", required = true, description = "the user whom the script acts as")
        String username = "";

        @Option(names = "--label", required = true, description = "what it is for, to know it by in the list")
        String label = "";

        /** As the application calls them. */
        enum Scope {
            READ,
            WRITE,
            ADMINISTER
        }

        @Option(
                names = "--scope",
                defaultValue = "READ",
                description =
                        "what it is good for: ${COMPLETION-CANDIDATES}, each with the one before"
                                + " (default: ${DEFAULT-VALUE}). WRITE enters what people enter, ADMINISTER also decides on users")
        Scope scope = Scope.READ;

        @Option(names = "--days", defaultValue = "90", description = "days of validity (default: ${DEFAULT-VALUE})")
        int days;

        @Override
        public Integer call() {
            TERMINAL.println(Company.perform(
                    present(),
                    Map.of(
                            "task",
                            "token",
                            "username",
                            username,
                            "label",
                            label,
                            "scope",
                            scope.name(),
                            "days",
                            Integer.toString(days))));
            return CommandLine.ExitCode.OK;
        }
    }

    @Command(name = "recover", description = "Gives an owner who lost the password a new one.")
    static final class Recover extends OnData {
        @Option(names = "--username", required = true, description = "the owner's username")
        String username = "";

        @Override
        public Integer call() {
            TERMINAL.println(Company.perform(present(), Map.of("task", "recover", "username", username)));
            return CommandLine.ExitCode.OK;
        }
    }

    @Command(name = "verify", description = "Proves the books, whether Eaveside is running or not.")
    static final class Verify extends OnData {
        @Override
        public Integer call() throws SQLException {
            boolean holds = withDatabase(present(), postgres -> {
                try (var connection = postgres.role(Schema.OWNER).getConnection()) {
                    connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
                    connection.setReadOnly(true);
                    connection.setAutoCommit(false);
                    boolean all = true;
                    for (var proof : BooksProof.run(connection)) {
                        TERMINAL.println(proof);
                        all &= proof.holds();
                    }
                    connection.rollback();
                    return all;
                }
            });
            return holds ? CommandLine.ExitCode.OK : CommandLine.ExitCode.SOFTWARE;
        }
    }

    @Command(name = "migrate", description = "Brings the database in the data folder to this version.")
    static final class Migrate extends OnData {
        @Override
        public Integer call() throws SQLException {
            var folder = present();
            folder.lock("migrating");
            try (var postgres = PostgresServer.start(PreparedServer.current().postgres(), folder)) {
                TERMINAL.println("Migrations run: " + Company.migrate(folder, postgres));
            }
            return CommandLine.ExitCode.OK;
        }
    }

    @Command(name = "prepare", hidden = true, description = "Makes the server ready to start fast.")
    static final class Prepare implements Callable<Integer> {
        @Option(names = "--from", required = true, description = "folder with the built parts")
        Path from = Path.of(".");

        @Option(names = "--to", required = true, description = "where the prepared server goes")
        Path to = Path.of(".");

        @Override
        public Integer call() {
            new Preparation(new PreparedServer(to.toAbsolutePath()), from.toAbsolutePath()).run();
            return CommandLine.ExitCode.OK;
        }
    }

    @Command(name = "train", hidden = true, description = "One start and stop, to learn which classes are needed.")
    static final class Train extends OnData {
        @Override
        public Integer call() {
            try (var company =
                    Company.start(folder(), "127.0.0.1", Company.freePort(), Map.of(), empty -> null, answer -> null)) {
                company.get("sign-in");
            }
            return CommandLine.ExitCode.OK;
        }
    }

    private interface DatabaseWork<T> {
        T on(PostgresServer postgres) throws SQLException;
    }

    private static <T> T withDatabase(DataFolder folder, DatabaseWork<T> work) throws SQLException {
        if (!folder.hasDatabase()) {
            throw new Failure("There is no database in " + folder.root());
        }
        folder.awaitTurn();
        var binaries = PreparedServer.current().postgres();
        if (!folder.tryLock("verifying")) {
            return work.on(PostgresServer.running(binaries, folder));
        }
        try (var postgres = PostgresServer.start(binaries, folder)) {
            return work.on(postgres);
        }
    }

    private static void divertChatter(DataFolder folder) {
        try {
            Files.createDirectories(folder.logs());
            // Added to: a server of this folder may have it open.
            Path log = folder.logs().resolve("console.log");
            var console = new PrintStream(
                    Files.newOutputStream(log, StandardOpenOption.CREATE, StandardOpenOption.APPEND), true);
            System.setOut(console);
            System.setErr(console);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
