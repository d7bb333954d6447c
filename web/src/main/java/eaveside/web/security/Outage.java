package eaveside.web.security;

import java.sql.SQLException;
import org.jspecify.annotations.Nullable;

/** Tells faults of the way to the database from faults of ours. */
final class Outage {
    private Outage() {}

    /** Whether the database was not there, ended the connection, or ended what took too long. */
    static boolean isBehind(Throwable thrown) {
        for (@Nullable Throwable t = thrown; t != null; t = t.getCause()) {
            if (t instanceof SQLException e && e.getSQLState() != null && isOutage(e.getSQLState())) {
                return true;
            }
            // The server's pool says that it has no connection to give in exceptions of its own.
            String type = t.getClass().getName();
            if (type.equals("com.sun.appserv.connectors.internal.api.PoolingException")
                    || type.equals("jakarta.resource.spi.ResourceAllocationException")
                    || type.equals("org.hibernate.exception.JDBCConnectionException")) {
                return true;
            }
        }
        return false;
    }

    /**
     * PostgreSQL's error codes (its manual, appendix A): class 08 is the connection, 57P the server's stopping or starting,
     * 53300 that it has no more connections, 57014 what was ended since it took too long.
     */
    private static boolean isOutage(String state) {
        return state.startsWith("08") || state.startsWith("57P") || state.equals("53300") || state.equals("57014");
    }
}
