package eaveside.web.entrance;

import eaveside.kernel.Network;
import java.net.InetSocketAddress;
import java.util.ArrayDeque;
import java.util.Collections;
import java.util.Comparator;
import java.util.Deque;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Predicate;
import java.util.function.ToLongFunction;
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

    /** Of all answers that wait for whoever asked for them, together, in bytes. */
    static final long ROOM_OF_ANSWERS = 20_000_000;

    /** What may wait on one connection when it asks for more, in bytes: others ask once they have been answered. */
    static final long MOST_UNTAKEN = 64_000;

    /** Of one network. What nobody takes of an answer waits on each. */
    static final int MOST_OPEN = 1_000;

    /** Of one network: half the threads of the server, which may wait there for a caller who takes nothing. */
    static final int MOST_ANSWERED = 100;

    /** What a body takes by itself, in bytes, however little of it has come. */
    static final long OF_A_BODY = 20_000;

    /** What each further part takes in which a body comes, in bytes, beside what it holds. */
    private static final long OF_A_PART = 100;

    /** Where those are counted who come through a proxy of ours: it says who they are, and limits them by that. */
    private static final String PROXIED = "";

    private final Map<Connection<?>, Progress> open = new ConcurrentHashMap<>();
    private final Predicate<String> isProxy;
    private final ToLongFunction<Connection<?>> untaken;

    /**
     * @param  isProxy whether an address is one of a proxy of ours
     * @param  untaken how much of an answer waits for the caller, in bytes
     */
    Connections(Predicate<String> isProxy, ToLongFunction<Connection<?>> untaken) {
        this.isProxy = isProxy;
        this.untaken = untaken;
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
            progress.waits(untaken.applyAsLong(connection), now);
            if (progress.isLate(now)) {
                end(connection);
            }
        });
        makeRoomForAnswers();
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
        return progress.isReceiving() || progress.isAnswered()
                ? OF_A_BODY + OF_A_PART * Math.max(0, progress.parts() - 1) + progress.held()
                : 0;
    }

    /** Of what a connection holds, as it was at one moment: what it is chosen by goes on changing. */
    private record Holding(Connection<?> connection, String network, long bytes, long since) {}

    /** One after the other, each looking anew: two that found too much at once end no more than one does. */
    private synchronized void endSome() {
        Map<String, Long> byNetwork = open.values().stream()
                .collect(Collectors.groupingBy(Progress::network, Collectors.summingLong(Connections::takenBy)));
        List<Holding> coming = open.entrySet().stream()
                .filter(entry -> entry.getValue().isReceiving())
                .map(entry -> holding(
                        entry, takenBy(entry.getValue()), entry.getValue().heard()))
                .toList();
        endSome(coming, byNetwork, ROOM);
    }

    /** Answers that nobody takes cost those who asked for them the connections, in the same order. */
    void makeRoomForAnswers() {
        if (open.keySet().stream().mapToLong(untaken).sum() > ROOM_OF_ANSWERS) {
            endSomeAnswers();
        }
    }

    private synchronized void endSomeAnswers() {
        List<Holding> waiting = open.entrySet().stream()
                .map(entry -> holding(
                        entry,
                        untaken.applyAsLong(entry.getKey()),
                        entry.getValue().takenLast()))
                .filter(holding -> holding.bytes() > 0)
                .toList();
        Map<String, Long> byNetwork = waiting.stream()
                .collect(Collectors.groupingBy(Holding::network, Collectors.summingLong(Holding::bytes)));
        endSome(waiting, byNetwork, ROOM_OF_ANSWERS);
    }

    private static Holding holding(Map.Entry<Connection<?>, Progress> entry, long bytes, long since) {
        return new Holding(entry.getKey(), entry.getValue().network(), bytes, since);
    }

    /** Of the network that holds the most, the one that has been silent for longest, until there is room for the rest. */
    private void endSome(List<Holding> some, Map<String, Long> byNetwork, long room) {
        Map<String, Deque<Holding>> left = some.stream()
                .sorted(Comparator.comparingLong(Holding::since))
                .collect(Collectors.groupingBy(Holding::network, Collectors.toCollection(ArrayDeque::new)));
        long taken = byNetwork.values().stream().mapToLong(Long::longValue).sum();
        while (taken > room && !left.isEmpty()) {
            String most = Collections.max(
                    left.keySet(), Comparator.comparingLong(network -> byNetwork.getOrDefault(network, 0L)));
            if (byNetwork.getOrDefault(most, 0L) < room / 2 && taken <= 2 * room) {
                return;
            }
            Holding next = left.getOrDefault(most, new ArrayDeque<>()).remove();
            left.computeIfPresent(most, (network, rest) -> rest.isEmpty() ? null : rest);
            taken -= next.bytes();
            byNetwork.merge(most, -next.bytes(), Long::sum);
            end(next.connection());
        }
    }

    /** False, and the connection ended, where so much waits for its caller that nobody asks for more in earnest. */
    boolean hasTakenWhatItAskedFor(Connection<?> connection) {
        boolean taken = untaken.applyAsLong(connection) <= MOST_UNTAKEN;
        if (!taken) {
            end(connection);
        }
        return taken;
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
