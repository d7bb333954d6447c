package eaveside.access;

import static eaveside.access.AccessFixture.PASSWORD;
import static eaveside.access.AccessFixture.address;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.testing.Bench;
import java.time.Duration;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SessionsIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void owner() {
        AccessFixture.add(bench, Role.OWNER);
    }

    private static BeginSession.Begun begin(User user) {
        return bench.get(BeginSession.class)
                .begin(
                        AccessFixture.signIn(bench, user.username(), PASSWORD, address()),
                        address(),
                        "a\nbrowser",
                        null);
    }

    private static boolean goesOn(BeginSession.Begun session) {
        return AccessFixture.resumed(bench, session.secret()).isPresent();
    }

    private static void pass(Duration time) {
        bench.clock().forward(time);
    }

    /** NIST SP 800-63B-4, 2.2.3: an hour without anything done, 24 hours in all. */
    @Test
    void the_office_signs_in_again_after_an_idle_hour_and_after_a_day() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        BeginSession.Begun idle = begin(user);
        pass(Duration.ofMinutes(59));
        assertTrue(goesOn(idle));
        pass(Duration.ofMinutes(59));
        assertTrue(goesOn(idle), "an hour from when it was seen");
        pass(Duration.ofMinutes(60));
        assertFalse(goesOn(idle));
        BeginSession.Begun busy = begin(user);
        for (int i = 0; i < 47; i++) {
            pass(Duration.ofMinutes(30));
            assertTrue(goesOn(busy));
        }
        pass(Duration.ofMinutes(30));
        assertFalse(goesOn(busy), "24 hours after it began");
    }

    /** NIST SP 800-63B-4, 2.1.3: 30 days in all. */
    @Test
    void a_technician_signs_in_again_after_a_month() {
        BeginSession.Begun session = begin(AccessFixture.add(bench, Role.TECHNICIAN));
        for (int i = 0; i < 32; i++) {
            pass(Duration.ofHours(22));
            assertTrue(goesOn(session));
        }
        pass(Duration.ofHours(16));
        assertFalse(goesOn(session));
        BeginSession.Begun forgotten = begin(AccessFixture.add(bench, Role.TECHNICIAN));
        pass(Duration.ofHours(24));
        assertFalse(goesOn(forgotten));
    }

    @Test
    void secrets_are_256_bits_and_only_their_digest_is_kept() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        Set<String> secrets = new HashSet<>();
        for (int i = 0; i < 20; i++) {
            BeginSession.Begun begun = begin(user);
            assertEquals(43, begun.secret().length());
            assertTrue(secrets.add(begun.secret()));
            assertFalse(begun.toString().contains(begun.secret()));
        }
        // 43 letters of six bits, of which the last has four: none of them tells the time or the machine.
        for (int place = 0; place < 43; place++) {
            int at = place;
            long different =
                    secrets.stream().map(secret -> secret.charAt(at)).distinct().count();
            assertTrue(different > 6, different + " of 20 at " + place);
        }
        for (String secret : secrets) {
            assertEquals(
                    0L, bench.value("select count(*) from user_session s where s::text like ?", "%" + secret + "%"));
        }
        assertTrue(AccessFixture.resumed(bench, "").isEmpty());
        assertTrue(AccessFixture.resumed(bench, "no\0thing").isEmpty());
    }

    @Test
    void a_user_sees_where_they_are_signed_in_and_ends_what_they_do_not_know() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        User other = AccessFixture.add(bench, Role.OFFICE);
        BeginSession.Begun mine = begin(user);
        BeginSession.Begun strange = begin(user);
        BeginSession.Begun theirs = begin(other);
        ReadSessions read = bench.get(ReadSessions.class);
        assertEquals(
                List.of(strange.id(), mine.id()),
                read.of(user.id()).stream().map(Session::id).toList());
        assertEquals("abrowser", read.of(user.id()).getFirst().agent(), "what a browser says takes one line");
        EndSession end = bench.get(EndSession.class);
        end.end(strange.id(), user.id());
        end.end(strange.id(), user.id());
        assertFalse(goesOn(strange));
        assertTrue(goesOn(mine));
        assertThrows(KernelRefusal.NotFound.class, () -> end.end(theirs.id(), user.id()));
        assertThrows(KernelRefusal.NotFound.class, () -> end.end(SessionId.next(), user.id()));
        assertTrue(goesOn(theirs));
        begin(user);
        begin(user);
        end.endOthers(mine.id(), user.id());
        assertEquals(
                List.of(mine.id()), read.of(user.id()).stream().map(Session::id).toList());
        assertTrue(goesOn(theirs));
        assertEquals(
                List.of("session.ended", "session.others-ended"),
                bench
                        .rows(
                                "select action from audit_event where user_id = ? and action like 'session%' order by at",
                                user.id().value())
                        .stream()
                        .map(row -> row.get("action"))
                        .toList());
    }

    @Test
    void an_ended_session_stays_ended_in_the_database_too() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        BeginSession.Begun session = begin(user);
        bench.get(EndSession.class).end(session.id(), user.id());
        assertThrows(
                AssertionError.class,
                () -> bench.execute(
                        "update user_session set ended_at = null where id = ?",
                        session.id().value()));
        assertFalse(goesOn(session));
    }

    @Test
    void sessions_that_nobody_has_used_for_long_are_deleted() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        BeginSession.Begun old = begin(user);
        pass(Duration.ofDays(91));
        begin(user);
        assertEquals(
                0L,
                bench.value(
                        "select count(*) from user_session where id = ?",
                        old.id().value()));
    }
}
