package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.lang.reflect.Proxy;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.glassfish.grizzly.CloseType;
import org.glassfish.grizzly.Closeable;
import org.glassfish.grizzly.Connection;
import org.glassfish.grizzly.GenericCloseListener;
import org.junit.jupiter.api.Test;

class ConnectionsTest {
    /** A fifth of the room, with what it takes by itself. */
    private static final int LARGE = (int) (Connections.ROOM / 5 - Connections.OF_A_BODY);

    private final Map<Connection<?>, Long> untaken = new HashMap<>();
    private final Connections connections =
            new Connections("203.0.113.1"::equals, connection -> untaken.getOrDefault(connection, 0L));
    private final List<String> ended = new ArrayList<>();
    private long now;

    /** What the server knows of a connection that is asked for here. */
    private Connection<?> from(String address, String name) {
        return (Connection<?>) Proxy.newProxyInstance(
                getClass().getClassLoader(),
                new Class<?>[] {Connection.class},
                (connection, method, arguments) -> switch (method.getName()) {
                    case "getPeerAddress" -> new InetSocketAddress(InetAddress.ofLiteral(address), 50_000);
                    case "terminateSilently" -> {
                        ended.add(name);
                        yield null;
                    }
                    case "hashCode" -> System.identityHashCode(connection);
                    case "equals" -> connection == arguments[0];
                    case "addCloseListener" -> {
                        if (name.equals("gone")) { // the server tells of what is closed already at once
                            ((GenericCloseListener) arguments[0]).onClosed((Closeable) connection, CloseType.REMOTELY);
                        }
                        yield null;
                    }
                    default -> throw new UnsupportedOperationException(method.getName());
                });
    }

    private Progress receiving(String address, String name, int bytes) {
        Connection<?> connection = from(address, name);
        assertTrue(connections.takes(connection));
        Progress progress = Objects.requireNonNull(connections.of(connection));
        progress.holds(bytes, ++now);
        connections.makeRoom();
        return progress;
    }

    @Test
    void what_a_flood_holds_is_ended_and_nothing_of_others() {
        receiving("192.0.2.1", "honest", LARGE);
        for (int i = 0; i < 20; i++) {
            receiving("198.51.100.7", "flood " + i, LARGE);
        }
        assertEquals(16, ended.size(), ended.toString());
        assertFalse(ended.contains("honest"));
        assertEquals("flood 0", ended.getFirst(), "the one that has been silent for longest");
        assertEquals(5, connections.size());
    }

    @Test
    void a_body_that_is_worked_on_takes_room_until_it_is_answered() {
        List<Progress> worked = new ArrayList<>();
        for (int i = 0; i < 4; i++) {
            Progress progress = receiving("198.51.100.7", "worked " + i, LARGE);
            progress.answers(++now);
            worked.add(progress);
        }
        receiving("192.0.2.1", "honest", LARGE);
        receiving("198.51.100.7", "one more", LARGE);
        assertEquals(List.of("one more"), ended);
        assertTrue(connections.isFullFor(LARGE + 1));
        assertFalse(connections.isFullFor(LARGE), "four of five are worked on");
        assertFalse(connections.isFullFor(1_000), "what is small always has room");
        worked.forEach(progress -> progress.rests(++now));
        receiving("198.51.100.7", "afterwards", LARGE);
        assertEquals(1, ended.size());
    }

    @Test
    void half_of_the_threads_wait_for_one_network_at_most() {
        Progress last = null;
        for (int i = 0; i < Connections.MOST_ANSWERED; i++) {
            last = receiving("2001:db8::" + (i + 1), "asked " + i, 0);
            assertFalse(connections.isBusyWith(last));
            last.answers(++now);
        }
        assertTrue(connections.isBusyWith(receiving("2001:db8::ffff", "one more", 0)));
        assertFalse(connections.isBusyWith(receiving("192.0.2.1", "somebody else", 0)));
        last.rests(++now);
        assertFalse(connections.isBusyWith(receiving("2001:db8::fffe", "again", 0)));
    }

    @Test
    void a_network_has_a_thousand_connections_at_most() {
        for (int i = 0; i < Connections.MOST_OPEN; i++) {
            assertTrue(connections.takes(from("192.0.2.1", "open " + i)));
        }
        assertFalse(connections.takes(from("192.0.2.1", "one more")));
        assertTrue(connections.takes(from("192.0.2.2", "somebody else")));
    }

    /** What a proxy sends on comes from many; it says from whom, and {@link Shares} tells them apart by that. */
    @Test
    void whoever_comes_through_a_proxy_is_counted_elsewhere() {
        for (int i = 0; i < Connections.MOST_OPEN; i++) {
            Progress asked = receiving("203.0.113.1", "asked " + i, 0);
            assertFalse(connections.isBusyWith(asked));
            asked.answers(++now);
        }
        assertTrue(connections.takes(from("203.0.113.1", "one more")));
    }

    @Test
    void many_bodies_that_hold_little_cost_those_who_hold_much_nothing() {
        Progress upload = receiving("192.0.2.1", "honest", 1_000_000);
        for (int i = 0; i < Connections.MOST_OPEN; i++) {
            receiving("198.51.100.7", "flood " + i, 10);
        }
        upload.holds(Sizes.OF_FILES, ++now);
        connections.makeRoom();
        assertEquals(List.of(), ended, "there is room for both");
        for (int i = 0; i < Connections.MOST_OPEN; i++) {
            receiving("198.51.100." + (8 + i / 500), "more " + i, 250);
        }
        assertFalse(ended.contains("honest"), ended.toString());
        assertFalse(ended.isEmpty());
    }

    @Test
    void answers_that_nobody_takes_cost_those_who_asked_and_nobody_else() {
        long one = Connections.ROOM_OF_ANSWERS / 10;
        Connection<?> honest = from("192.0.2.1", "honest");
        connections.takes(honest);
        untaken.put(honest, one);
        for (int network = 2; network < 7; network++) {
            for (int i = 0; i < 10; i++) {
                Connection<?> flood = from("198.51.100." + network, "flood " + network + " " + i);
                assertTrue(connections.takes(flood));
                untaken.put(flood, one);
            }
        }
        connections.sweep();
        assertFalse(ended.contains("honest"), ended.toString());
        assertEquals(31, ended.size(), "no network has half, and all together twice the room: " + ended);
        assertFalse(connections.hasTakenWhatItAskedFor(honest), "while so much waits, nothing more is made");
        untaken.put(honest, Connections.MOST_UNTAKEN);
        assertTrue(connections.hasTakenWhatItAskedFor(honest));
    }

    @Test
    void whoever_takes_nothing_more_for_long_is_late() {
        long second = Duration.ofSeconds(1).toNanos();
        Progress progress = new Progress("192.0.2.1");
        progress.waits(0, 0);
        progress.waits(100_000, second);
        progress.waits(100_000, 30 * second);
        assertFalse(progress.isLate(30 * second));
        progress.waits(99_999, 31 * second);
        assertFalse(progress.isLate(61 * second), "something was taken");
        assertTrue(progress.isLate(62 * second));
        progress.waits(0, 62 * second);
        assertFalse(progress.isLate(62 * second));
    }

    /** As long as a slow phone needs, and no longer. */
    @Test
    void what_takes_too_long_is_late() {
        long second = Duration.ofSeconds(1).toNanos();
        Progress progress = new Progress("192.0.2.1");
        progress.receives(new byte[] {'G'}, 0);
        assertFalse(progress.isLate(10 * second));
        assertTrue(progress.isLate(11 * second), "a head");
        progress.holds(0, 0);
        assertFalse(progress.isLate(20 * second));
        assertTrue(progress.isLate(21 * second), "a body of which nothing comes");
        progress.holds(LARGE, 0);
        int largest = LARGE / Progress.SLOWEST + 20;
        assertFalse(progress.isLate(largest * second), "2 kB a second");
        assertTrue(progress.isLate((largest + 1) * second));
        progress.answers(0);
        assertFalse(progress.isLate(180 * second));
        assertTrue(progress.isLate(181 * second), "an answer");
        progress.leaves(0);
        assertTrue(progress.isLate(3 * second), "what was refused");
    }

    @Test
    void what_has_gone_is_forgotten_and_not_brought_back() {
        Connection<?> gone = from("192.0.2.1", "gone");
        connections.takes(gone);
        assertNull(connections.of(gone));
        assertEquals(0, connections.size());
    }
}
