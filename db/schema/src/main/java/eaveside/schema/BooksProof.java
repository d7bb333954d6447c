package eaveside.schema;

import java.io.IOException;
import java.io.InputStream;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Proves that the books are true: each proof is a query under {@code db/proofs} that answers no row where it holds,
 * otherwise the first offending document. All run in one repeatable-read snapshot, so the application may go on.
 */
public final class BooksProof {
    private BooksProof() {}

    /**
     * One proof and how it went.
     *
     * @param  statement what is proved, in words
     * @param  offender  the first document that breaks it and how; null where it holds
     */
    public record Result(String statement, @Nullable String offender) {
        public boolean holds() {
            return offender == null;
        }

        /** The line that the command prints. */
        @Override
        public String toString() {
            return offender == null ? "ok    " + statement : "FAIL  " + statement + ": " + offender;
        }
    }

    /** Runs every proof on the connection, in a read-only transaction of its own that is rolled back at the end. */
    public static List<Result> run(Connection connection) throws SQLException {
        connection.setAutoCommit(false);
        connection.setTransactionIsolation(Connection.TRANSACTION_REPEATABLE_READ);
        connection.setReadOnly(true);
        List<Result> results = new ArrayList<>();
        try (Statement statement = connection.createStatement()) {
            for (String file : resource("proofs.txt").split("\\R")) {
                if (!file.isBlank()) {
                    results.add(prove(statement, resource(file.strip())));
                }
            }
        } finally {
            connection.rollback();
        }
        return results;
    }

    private static Result prove(Statement statement, String sql) throws SQLException {
        String name = sql.substring(2, sql.indexOf('\n')).strip();
        try (ResultSet offender = statement.executeQuery(sql)) {
            return offender.next()
                    ? new Result(name, offender.getString(1) + ": " + offender.getString(2))
                    : new Result(name, null);
        }
    }

    private static String resource(String name) {
        try (InputStream in = BooksProof.class.getResourceAsStream("/db/proofs/" + name)) {
            if (in == null) {
                throw new IllegalStateException("proof " + name + " is listed but missing");
            }
            return new String(in.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new IllegalStateException("proof " + name + " cannot be read", e);
        }
    }
}
