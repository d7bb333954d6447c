package eaveside.web.entrance;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import org.glassfish.grizzly.Buffer;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.filterchain.BaseFilter;
import org.glassfish.grizzly.filterchain.FilterChainContext;
import org.glassfish.grizzly.filterchain.NextAction;
import org.glassfish.grizzly.memory.Buffers;
import org.glassfish.grizzly.memory.MemoryManager;

/**
 * Stands before the reading of requests: notes when one begins, keeps its head until that is whole, and passes over what comes
 * before it is answered or after it was refused. What it hands on lies in memory of its own and of its own size, so that {@link Heads} reads what
 * was sent and nothing that lay there before.
 */
final class Pace extends BaseFilter {
    /** RFC 6585, 5: before the server has read anything that it could answer by itself. */
    private static final String TOO_LONG =
            "HTTP/1.1 431 Request Header Fields Too Large\r\nConnection: close\r\nContent-Length: 0\r\n\r\n";

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
        byte[] read = taken(context.getMessage());
        // From somebody who has gone meanwhile, or who was refused.
        if (progress == null || progress.isLeaving()) {
            return context.getStopAction();
        }
        byte[] whole = progress.receives(read, System.nanoTime());
        if (progress.isHeadTooLong()) {
            progress.leaves(System.nanoTime());
            context.write(Buffers.wrap(MemoryManager.DEFAULT_MEMORY_MANAGER, TOO_LONG, StandardCharsets.US_ASCII));
        }
        if (whole.length == 0) {
            return context.getStopAction();
        }
        context.setMessage(Buffers.wrap(MemoryManager.DEFAULT_MEMORY_MANAGER, whole));
        return context.getInvokeAction();
    }

    private static byte[] taken(Buffer buffer) {
        byte[] bytes = new byte[buffer.remaining()];
        buffer.get(bytes);
        buffer.tryDispose();
        return bytes;
    }
}
