package eaveside.web.entrance;

import java.net.InetSocketAddress;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.stream.Collectors;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.GenericCloseListener;

/** The open connections and how far each has come. Ends those that take too long, and some where bodies take too much room. */
final class Connections {
    /** Of all bodies that are coming in or worked on, together. */
    static final long ROOM = 64_000_000;

    /** Bodies that are still coming in. */
    static final int MOST_RECEIVING = 1_000;

    /** What a connection counts for by itself, in bytes, where many hold little. */
    private static final long OF_A_CONNECTION = 100_000;

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

    /**
     * A flood of bodies that are never ended costs its senders the connections: the address first that holds the most, and of its own
     * the one that has been silent for longest, so that what is on its way arrives. Behind a proxy all have one address.
     */
    void makeRoom() {
        if (Taken.by(open.values()).isTooMuch()) {
            endSome();
        }
    }

    /** What bodies hold, and how many are still coming in. */
    private record Taken(long bytes, int receiving) {
        static Taken by(Collection<Progress> all) {
            long bytes = 0;
            int receiving = 0;
            for (Progress progress : all) {
                bytes += progress.holds();
                receiving += progress.isReceiving() ? 1 : 0;
            }
            return new Taken(bytes, receiving);
        }

        boolean isTooMuch() {
            return bytes > ROOM || receiving > MOST_RECEIVING;
        }

        Taken without(Progress ended) {
            return new Taken(bytes - ended.holds(), receiving - 1);
        }
    }

    /** One after the other, each looking anew: two that found too much at once end no more than one does. */
    private synchronized void endSome() {
        Taken taken = Taken.by(open.values());
        Map<Object, Long> heldBy = open.entrySet().stream()
                .collect(Collectors.groupingBy(
                        entry -> address(entry.getKey()),
                        Collectors.summingLong(
                                entry -> OF_A_CONNECTION + entry.getValue().holds())));
        List<Map.Entry<Connection<?>, Progress>> firstToGo = open.entrySet().stream()
                .filter(entry -> entry.getValue().isReceiving())
                .sorted(Comparator.<Map.Entry<Connection<?>, Progress>>comparingLong(
                                entry -> -heldBy.getOrDefault(address(entry.getKey()), 0L))
                        .thenComparingLong(entry -> entry.getValue().heard()))
                .toList();
        for (Map.Entry<Connection<?>, Progress> entry : firstToGo) {
            if (!taken.isTooMuch()) {
                return;
            }
            taken = taken.without(entry.getValue());
            end(entry.getKey());
        }
    }

    private static Object address(Connection<?> connection) {
        return connection.getPeerAddress() instanceof InetSocketAddress caller && caller.getAddress() != null
                ? caller.getAddress()
                : "";
    }

    private void end(Connection<?> connection) {
        open.remove(connection);
        connection.terminateSilently();
    }
}
