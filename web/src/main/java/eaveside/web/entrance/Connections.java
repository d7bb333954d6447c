package eaveside.web.entrance;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.GenericCloseListener;

/** The open connections and how far each has come. Ends those that take too long, and the oldest where bodies take too much room. */
final class Connections {
    /** Of all bodies that are still coming in, together. */
    static final long ROOM = 96_000_000;

    /** Bodies that are still coming in. */
    static final int MOST_RECEIVING = 1_000;

    private final Map<Connection<?>, Progress> open = new ConcurrentHashMap<>();

    Progress of(Connection<?> connection) {
        return open.computeIfAbsent(connection, fresh -> {
            fresh.addCloseListener((GenericCloseListener) (closed, type) -> open.remove(fresh));
            return new Progress();
        });
    }

    /** Ends those that are late. */
    void sweep() {
        long now = System.nanoTime();
        open.forEach((connection, progress) -> {
            if (progress.isLate(now)) {
                end(connection);
            }
        });
    }

    /** A flood of bodies that are never ended costs its senders the connections, the oldest first. */
    void makeRoom() {
        long held = 0;
        int count = 0;
        for (Progress progress : open.values()) {
            if (progress.isReceiving()) {
                held += progress.received();
                count++;
            }
        }
        if (held > ROOM || count > MOST_RECEIVING) {
            makeRoom(held - ROOM, count - MOST_RECEIVING);
        }
    }

    private synchronized void makeRoom(long bytes, int count) {
        List<Map.Entry<Connection<?>, Progress>> oldestFirst = open.entrySet().stream()
                .filter(entry -> entry.getValue().isReceiving())
                .sorted(Comparator.comparingLong(entry -> entry.getValue().since()))
                .toList();
        long freed = 0;
        int ended = 0;
        for (Map.Entry<Connection<?>, Progress> entry : oldestFirst) {
            if (freed >= bytes && ended >= count) {
                return;
            }
            freed += entry.getValue().received();
            ended++;
            end(entry.getKey());
        }
    }

    private void end(Connection<?> connection) {
        open.remove(connection);
        connection.terminateSilently();
    }
}
