package eaveside.web.entrance;

import eaveside.kernel.Network;
import java.net.InetSocketAddress;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.GenericCloseListener;
import org.jspecify.annotations.Nullable;

/**
 * The open connections and how far each has come. Ends those that take too long, and some where bodies take too much room; tells
 * whether a network has more of them than its part.
 */
final class Connections {
    /** Of all bodies that are coming in or worked on, together, in bytes. No large one is worked on beyond that. */
    static final long ROOM = 40_000_000;

    /** What a network may take before anything of its is ended, while all together take no more than twice the room. */
    static final long FAIR = ROOM / 2;

    /** Of one network. What nobody takes of an answer waits on each. */
    static final int MOST_OPEN = 1_000;

    /** Of one network: half the threads of the server, which may wait there for a caller who takes nothing. */
    static final int MOST_ANSWERED = 100;

    /** What a body takes by itself, in bytes, however little of it has come: what is read at once, and what is known of it. */
    static final long OF_A_BODY = 20_000;

    /** Where those are counted who come through a proxy of ours: it says who they are, and limits them by that. */
    private static final String PROXIED = "";

    private final Map<Connection<?>, Progress> open = new ConcurrentHashMap<>();
    private final Predicate<String> isProxy;

    /** @param  isProxy whether an address is one of a proxy of ours */
    Connections(Predicate<String> isProxy) {
        this.isProxy = isProxy;
    }

    /** How far it has come; null where it has gone, or nobody has seen it come. */
    @Nullable
    Progress of(Connection<?> connection) {
        return open.get(connection);
    }

    /** False where its network has as many as it may. */
    boolean takes(Connection<?> connection) {
        Progress fresh = new Progress(network(connection));
        if (isMore(fresh.network(), progress -> true, MOST_OPEN)) {
            return false;
        }
        open.put(connection, fresh);
        // After it is there: one that has gone meanwhile is taken out at once.
        connection.addCloseListener((GenericCloseListener) (closed, type) -> open.remove(connection));
        return true;
    }

    /** Whether as many requests of the same network are worked on as may be. */
    boolean isBusyWith(Progress one) {
        return isMore(one.network(), Progress::isAnswered, MOST_ANSWERED);
    }

    /** Whether what is worked on leaves no room for a large body that has come. */
    boolean isFullFor(int bytes) {
        return bytes >= Shares.OF_A_LARGE_BODY
                && bytes + OF_A_BODY + taken(open.values().stream().filter(Progress::isAnswered)) > ROOM;
    }

    private boolean isMore(String network, Predicate<Progress> such, int most) {
        return !network.equals(PROXIED)
                && open.values().stream()
                                .filter(progress -> progress.network().equals(network) && such.test(progress))
                                .count()
                        >= most;
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
     * the one that has been silent for longest, so that what is on its way arrives. A proxy counts as one: it sends bodies as a whole.
     */
    void makeRoom() {
        if (taken(open.values().stream()) > ROOM) {
            endSome();
        }
    }

    private static long taken(Stream<Progress> some) {
        return some.mapToLong(Connections::takenBy).sum();
    }

    private static long takenBy(Progress progress) {
        return progress.isReceiving() || progress.isAnswered() ? OF_A_BODY + progress.held() : 0;
    }

    /** A connection whose body is coming in, as it was at one moment: what it is sorted by goes on changing. */
    private record Receiving(Connection<?> connection, long taken, long heard, long takenByNetwork) {}

    /** One after the other, each looking anew: two that found too much at once end no more than one does. */
    private synchronized void endSome() {
        long taken = taken(open.values().stream());
        Map<String, Long> takenByNetwork = open.values().stream()
                .collect(Collectors.groupingBy(Progress::network, Collectors.summingLong(Connections::takenBy)));
        List<Receiving> firstToGo = open.entrySet().stream()
                .filter(entry -> entry.getValue().isReceiving())
                .map(entry -> receiving(entry.getKey(), entry.getValue(), takenByNetwork))
                .sorted(Comparator.comparingLong(Receiving::takenByNetwork)
                        .reversed()
                        .thenComparingLong(Receiving::heard))
                .toList();
        for (Receiving one : firstToGo) {
            if (taken <= ROOM || one.takenByNetwork() < FAIR && taken <= 2 * ROOM) {
                return;
            }
            taken -= one.taken();
            end(one.connection());
        }
    }

    private static Receiving receiving(Connection<?> connection, Progress progress, Map<String, Long> takenByNetwork) {
        return new Receiving(
                connection, takenBy(progress), progress.heard(), takenByNetwork.getOrDefault(progress.network(), 0L));
    }

    private String network(Connection<?> connection) {
        if (connection.getPeerAddress() instanceof InetSocketAddress caller && caller.getAddress() != null) {
            return isProxy.test(caller.getAddress().getHostAddress()) ? PROXIED : Network.of(caller.getAddress());
        }
        return "no address";
    }

    private void end(Connection<?> connection) {
        connection.terminateSilently();
        open.remove(connection);
    }
}
