package eaveside.web.entrance;

import java.io.IOException;
import org.glassfish.grizzly.Buffer;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.filterchain.BaseFilter;
import org.glassfish.grizzly.filterchain.FilterChainContext;
import org.glassfish.grizzly.filterchain.NextAction;

/** Stands before the reading of requests: notes when one begins, and passes over what comes after one that was refused. */
final class Pace extends BaseFilter {
    private final Connections connections;

    Pace(Connections connections) {
        this.connections = connections;
    }

    @Override
    public NextAction handleAccept(FilterChainContext context) throws IOException {
        Connection<?> connection = context.getConnection();
        if (connection.isOpen() && !connections.takes(connection)) {
            connection.terminateSilently();
        }
        return connection.isOpen() ? context.getInvokeAction() : context.getStopAction();
    }

    @Override
    public NextAction handleRead(FilterChainContext context) throws IOException {
        Progress progress = connections.of(context.getConnection());
        // From somebody who has gone meanwhile, or who was refused.
        if (progress == null || progress.isLeaving()) {
            Buffer unread = context.getMessage();
            unread.tryDispose();
            return context.getStopAction();
        }
        progress.receives(System.nanoTime());
        return context.getInvokeAction();
    }
}
