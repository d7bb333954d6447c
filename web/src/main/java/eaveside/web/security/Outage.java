package eaveside.web.security;

import eaveside.web.entrance.PlainAnswer;
import java.sql.SQLException;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** Tells faults of the database and of the way to it from faults of ours. Its codes: PostgreSQL's manual, appendix A. */
final class Outage {
    /**
     * What was ended since it took too long (57014), since it waited too long for another (55P03), or since two waited for one another
     * (40P01): it may well go through the next time.
     */
    private static final Set<String> BUSY = Set.of("57014", "55P03", "40P01");

    private Outage() {}

    /** What is said where the database was not there or had too much to do; null where it is something else. */
    static @Nullable PlainAnswer behind(Throwable thrown) {
        for (@Nullable Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof SQLException e && e.getSQLState() != null) {
                if (BUSY.contains(e.getSQLState())) {
                    return PlainAnswer.busy();
                }
                if (isGone(e.getSQLState())) {
                    return PlainAnswer.noDatabase();
                }
            }
            // The server's pool says that it has no connection to give in exceptions of its own.
            String type = t.getClass().getName();
            if (type.equals("com.sun.appserv.connectors.internal.api.PoolingException")
                    || type.equals("jakarta.resource.spi.ResourceAllocationException")
                    || type.equals("org.hibernate.exception.JDBCConnectionException")) {
                return PlainAnswer.noDatabase();
            }
        }
        return null;
    }

    /** Class 08 is the connection, 57P the server's stopping or starting, 53300 that it has no more connections. */
    private static boolean isGone(String state) {
        return state.startsWith("08") || state.startsWith("57P") || state.equals("53300");
    }
}
