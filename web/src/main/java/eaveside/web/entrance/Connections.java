package eaveside.web.entrance;

import java.net.InetSocketAddress;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.GenericCloseListener;
import org.jspecify.annotations.Nullable;

/**
 * The open connections and how far each has come. Ends those that take too long, and some where bodies take too much room; tells
 * whether a network has more of them than its part.
 */
final class Connections {
    /** Of all bodies that are coming in or worked on, together, in bytes; what is worked on may hold as much by itself. */
    static final long ROOM = 40_000_000;

    /** What a network may hold of it before anything of its is ended, while there is twice the room left. */
    static final long FAIR = ROOM / 2;

    /** Bodies that are still coming in. */
    static final int MOST_RECEIVING = 1_000;

    /** Of one network. What nobody takes of an answer waits on each. */
    static final int MOST_OPEN = 1_000;

    /** Of one network: half the threads of the server, which may wait there for a caller who takes nothing. */
    static final int MOST_ANSWERED = 100;

    /** What a connection counts for by itself, in bytes, where many hold little. */
    private static final long OF_A_CONNECTION = 10_000;

    private final Map<Connection<?>, Progress> open = new ConcurrentHashMap<>();

    /** How far it has come; null where it has gone, or nobody has seen it come. */
    @Nullable
    Progress of(Connection<?> connection) {
        return open.get(connection);
    }

    /** False where its network has as many as it may. */
    boolean takes(Connection<?> connection) {
        Progress fresh = new Progress(network(connection));
        if (of(fresh.network(), progress -> true) >= MOST_OPEN) {
            return false;
        }
        open.put(connection, fresh);
        // After it is there: one that has gone meanwhile is taken out at once.
        connection.addCloseListener((GenericCloseListener) (closed, type) -> open.remove(connection));
        return true;
    }

    /** Whether as many requests of the same network are worked on as may be. */
    boolean isBusyWith(Progress one) {
        return of(one.network(), Progress::isAnswered) >= MOST_ANSWERED;
    }

    /** Whether what is worked on leaves no room for a large body that has come. */
    boolean isFullFor(int bytes) {
        long workedOn = open.values().stream()
                .filter(Progress::isAnswered)
                .mapToLong(Progress::held)
                .sum();
        return bytes >= Shares.OF_A_LARGE_BODY && workedOn + bytes > ROOM;
    }

    private long of(String network, Predicate<Progress> such) {
        return open.values().stream()
                .filter(progress -> progress.network().equals(network) && such.test(progress))
                .count();
    }

    int size() {
        return open.size();
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
     * A flood of bodies that are never ended costs its senders the connections: the network first that holds the most, and of its own
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
                bytes += progress.held();
                receiving += progress.isReceiving() ? 1 : 0;
            }
            return new Taken(bytes, receiving);
        }

        boolean isTooMuch() {
            return bytes > ROOM || receiving > MOST_RECEIVING;
        }

        boolean isFarTooMuch() {
            return bytes > 2 * ROOM || receiving > MOST_RECEIVING;
        }

        Taken without(long held) {
            return new Taken(bytes - held, receiving - 1);
        }
    }

    /** A connection whose body is coming in, as it was at one moment: what it is sorted by goes on changing. */
    private record Receiving(Connection<?> connection, long held, long heard, long heldByNetwork) {}

    /** One after the other, each looking anew: two that found too much at once end no more than one does. */
    private synchronized void endSome() {
        Taken taken = Taken.by(open.values());
        Map<String, Long> heldBy = open.values().stream()
                .collect(Collectors.groupingBy(
                        Progress::network, Collectors.summingLong(progress -> OF_A_CONNECTION + progress.held())));
        List<Receiving> firstToGo = open.entrySet().stream()
                .filter(entry -> entry.getValue().isReceiving())
                .map(entry -> receiving(entry.getKey(), entry.getValue(), heldBy))
                .sorted(Comparator.comparingLong(Receiving::heldByNetwork)
                        .reversed()
                        .thenComparingLong(Receiving::heard))
                .toList();
        for (Receiving one : firstToGo) {
            if (!taken.isTooMuch() || one.heldByNetwork() < FAIR && !taken.isFarTooMuch()) {
                return;
            }
            taken = taken.without(one.held());
            end(one.connection());
        }
    }

    private static Receiving receiving(Connection<?> connection, Progress progress, Map<String, Long> heldBy) {
        return new Receiving(
                connection, progress.held(), progress.heard(), heldBy.getOrDefault(progress.network(), 0L));
    }

    private static String network(Connection<?> connection) {
        return connection.getPeerAddress() instanceof InetSocketAddress caller && caller.getAddress() != null
                ? Network.of(caller.getAddress())
                : "";
    }

    private void end(Connection<?> connection) {
        open.remove(connection);
        connection.terminateSilently();
    }
}
