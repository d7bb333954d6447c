package eaveside.web.entrance;

import java.io.IOException;
import org.glassfish.grizzly.Buffer;
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
        connections.of(context.getConnection());
        return context.getInvokeAction();
    }

    @Override
    public NextAction handleRead(FilterChainContext context) throws IOException {
        Progress progress = connections.of(context.getConnection());
        if (progress.isLeaving()) {
            Buffer unread = context.getMessage();
            unread.tryDispose();
            return context.getStopAction();
        }
        progress.receives(System.nanoTime());
        return context.getInvokeAction();
    }
}
