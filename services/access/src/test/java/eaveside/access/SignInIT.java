package eaveside.access;

import static eaveside.access.AccessFixture.PASSWORD;
import static eaveside.access.AccessFixture.address;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.testing.Bench;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SignInIT {
    private static final String WRONG = "windows, not gutters";

    @RegisterExtension
    static final Bench bench = new Bench();

    @BeforeAll
    static void owner() {
        AccessFixture.add(bench, Role.OWNER);
    }

    private static SignedIn signIn(String username, String password, String address) {
        return AccessFixture.signIn(bench, username, password, address);
    }

    private static void fail(String username, String address, int times) {
        for (int i = 0; i < times; i++) {
            assertThrows(AccessRefusal.WrongCredentials.class, () -> signIn(username, WRONG, address));
        }
    }

    private static Duration waitOf(String username, String address) {
        AccessRefusal.TooSoon refused =
                assertThrows(AccessRefusal.TooSoon.class, () -> signIn(username, PASSWORD, address));
        return Duration.between(bench.clock().instant(), refused.until());
    }

    @Test
    void blanks_at_the_ends_of_a_password_are_part_of_it() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        String blank = " gutters before winter comes ";
        bench.get(ResetPassword.class)
                .reset(
                        user.id(),
                        new NewPassword(blank),
                        bench.get(ReadUsers.class).credentials(user.id()),
                        AccessFixture.add(bench, Role.OWNER).id());
        assertEquals(user.id(), signIn(user.username(), blank, address()).user().id());
        for (String without : List.of(blank.strip(), blank.stripLeading(), blank.stripTrailing())) {
            assertThrows(
                    AccessRefusal.WrongCredentials.class, () -> signIn(user.username(), without, address()), without);
            bench.clock().forward(Duration.ofMinutes(1));
        }
    }

    @Test
    void the_right_password_lets_in_and_is_on_the_audit_log() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        String address = address();
        SignedIn signedIn = signIn(" " + user.username().toUpperCase(java.util.Locale.ROOT) + " ", PASSWORD, address);
        assertEquals(user, signedIn.user());
        assertEquals(
                user,
                AccessFixture.resumed(bench, AccessFixture.session(bench, signedIn))
                        .orElseThrow());
        AuditLine line = bench.get(ReadAudit.class)
                .lines(new AuditFilter(user.id(), "sign-in", null, null, null), null, 5)
                .rows()
                .getFirst();
        assertEquals(
                new AuditLine(
                        line.at(),
                        user.id(),
                        user.name(),
                        "sign-in",
                        user.username(),
                        "",
                        AuditEvent.Outcome.DONE,
                        address),
                line);
        assertEquals(user.name(), line.byName());
    }

    /** The database keeps microseconds and rounds: a finer clock once made the very first attempt wait. */
    @Test
    void a_clock_finer_than_the_database_makes_nobody_wait() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        bench.clock().forward(Duration.ofNanos(999));
        assertEquals(user, signIn(user.username(), PASSWORD, address()).user());
    }

    @Test
    void an_unknown_username_a_wrong_password_and_a_deactivated_user_get_one_answer() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        User gone = AccessFixture.add(bench, Role.TECHNICIAN);
        bench.get(DeactivateUser.class).deactivate(gone.id(), user.id());
        String address = address();
        List<String> answers = new ArrayList<>();
        answers.add(assertThrows(AccessRefusal.WrongCredentials.class, () -> signIn(user.username(), WRONG, address))
                .text());
        answers.add(assertThrows(AccessRefusal.WrongCredentials.class, () -> signIn("nobody", PASSWORD, address))
                .text());
        answers.add(assertThrows(AccessRefusal.WrongCredentials.class, () -> signIn(gone.username(), PASSWORD, address))
                .text());
        answers.add(assertThrows(AccessRefusal.WrongCredentials.class, () -> signIn("no\0body", PASSWORD, address))
                .text());
        answers.add(assertThrows(
                        AccessRefusal.WrongCredentials.class,
                        () -> signIn(user.username(), PASSWORD.repeat(100), address))
                .text());
        assertEquals(1, answers.stream().distinct().count(), answers.toString());
        assertEquals(
                Stream.of("unknown username", user.username(), "unknown username", gone.username(), user.username())
                        .sorted()
                        .toList(),
                bench
                        .rows(
                                "select subject from audit_event where action = 'sign-in' and outcome = 'REFUSED'"
                                        + " and address = ? order by subject collate \"C\"",
                                address)
                        .stream()
                        .map(row -> row.get("subject"))
                        .toList(),
                "each is on the audit log");
    }

    @Test
    void what_was_typed_as_an_unknown_username_is_not_kept() {
        String typed = "my secret password typed one field too high";
        fail(typed, address(), 1);
        assertEquals(0L, bench.value("select count(*) from audit_event e where e::text like '%one field too high%'"));
        assertEquals(
                0L, bench.value("select count(*) from sign_in_failure f where f::text like '%one field too high%'"));
    }

    @Test
    void an_unknown_username_takes_as_long_as_a_wrong_password() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        long[] known = new long[7];
        long[] unknown = new long[7];
        for (int i = 0; i < known.length; i++) {
            bench.clock().forward(Duration.ofDays(2));
            known[i] = nanos(user.username());
            unknown[i] = nanos("stranger" + i);
        }
        Arrays.sort(known);
        Arrays.sort(unknown);
        // Without the hash an answer takes a tenth of this; the bound is wide because the machine is shared.
        assertTrue(unknown[3] * 3 > known[3], () -> "known " + known[3] + " ns, unknown " + unknown[3] + " ns");
    }

    private static long nanos(String username) {
        String address = address();
        long start = System.nanoTime();
        fail(username, address, 1);
        return System.nanoTime() - start;
    }

    @Test
    void failures_of_a_username_make_the_next_attempt_wait_longer_each_time() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        fail(user.username(), address(), 3);
        assertEquals(Duration.ofSeconds(2), waitOf(user.username(), address()), "from any address");
        assertEquals(Duration.ofSeconds(2), waitOf(user.username(), address()), "an attempt that waits is not counted");
        bench.clock().forward(Duration.ofSeconds(2));
        fail(user.username(), address(), 1);
        assertEquals(Duration.ofSeconds(4), waitOf(user.username(), address()));
        assertEquals(
                4, bench.value("select max(failures) from sign_in_failure where type = 'USERNAME' and failures = 4"));
        bench.clock().forward(Duration.ofSeconds(4));
        signIn(user.username(), PASSWORD, address());
        fail(user.username(), address(), 2);
        signIn(user.username(), PASSWORD, address());
    }

    @Test
    void guesses_made_elsewhere_never_delay_a_browser_that_has_signed_in_before() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        User other = AccessFixture.add(bench, Role.OFFICE);
        String office = address();
        SignIn signIn = bench.get(SignIn.class);
        SignedIn first = signIn(user.username(), PASSWORD, office);
        String known = bench.get(BeginSession.class)
                .begin(first, office, "a browser", null)
                .browser();
        for (int i = 0; i < 25; i++) {
            String guessed = i % 2 == 0 ? user.username() : "guess" + i;
            try {
                signIn.signIn(guessed, WRONG.toCharArray(), office, null);
            } catch (AccessRefusal.WrongCredentials | AccessRefusal.TooSoon refused) {
                // As many as an attacker behind the same address likes.
            }
        }
        waitOf(user.username(), office);
        waitOf(user.username(), address());
        assertEquals(
                user,
                signIn.signIn(user.username(), PASSWORD.toCharArray(), office, known)
                        .user());
        assertThrows(
                AccessRefusal.TooSoon.class,
                () -> signIn.signIn(other.username(), PASSWORD.toCharArray(), office, known),
                "it is known as one user's, not as everybody's");
        assertThrows(
                AccessRefusal.TooSoon.class,
                () -> signIn.signIn(user.username(), PASSWORD.toCharArray(), office, known + "x"));
    }

    @Test
    void a_known_browser_waits_for_its_own_slips() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        SignIn signIn = bench.get(SignIn.class);
        String known = bench.get(BeginSession.class)
                .begin(signIn(user.username(), PASSWORD, address()), address(), "a browser", null)
                .browser();
        for (int i = 0; i < 3; i++) {
            assertThrows(
                    AccessRefusal.WrongCredentials.class,
                    () -> signIn.signIn(user.username(), WRONG.toCharArray(), address(), known));
        }
        AccessRefusal.TooSoon soon = assertThrows(
                AccessRefusal.TooSoon.class,
                () -> signIn.signIn(user.username(), PASSWORD.toCharArray(), address(), known));
        assertEquals(3, soon.seconds(), "two, told in full");
        signIn(user.username(), PASSWORD, address());
        bench.clock().forward(Duration.ofSeconds(2));
        signIn.signIn(user.username(), PASSWORD.toCharArray(), address(), known);
    }

    @Test
    void a_browser_is_known_for_a_year_and_until_somebody_else_gives_its_user_another_password() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        BeginSession begin = bench.get(BeginSession.class);
        String known = begin.begin(signIn(user.username(), PASSWORD, address()), address(), "", null)
                .browser();
        assertEquals(
                known,
                begin.begin(signIn(user.username(), PASSWORD, address()), address(), "", known)
                        .browser(),
                "several people may sign in with one browser");
        assertNotEquals(
                "planted",
                begin.begin(signIn(user.username(), PASSWORD, address()), address(), "", "planted")
                        .browser());
        bench.clock().forward(Duration.ofDays(366));
        assertNotEquals(
                known,
                begin.begin(signIn(user.username(), PASSWORD, address()), address(), "", known)
                        .browser());
        String count = "select count(*) from known_browser where user_id = ?";
        bench.get(ResetPassword.class)
                .reset(
                        user.id(),
                        new NewPassword(PASSWORD),
                        bench.get(ReadUsers.class).credentials(user.id()),
                        AccessFixture.add(bench, Role.OWNER).id());
        assertEquals(0L, bench.value(count, user.id().value()));
        for (int i = 0; i < 25; i++) {
            begin.begin(signIn(user.username(), PASSWORD, address()), address(), "", null);
        }
        assertEquals(20L, bench.value(count, user.id().value()));
    }

    @Test
    void a_username_that_nobody_has_waits_like_any_other() {
        fail("nobody-at-all", address(), 3);
        assertEquals(Duration.ofSeconds(2), waitOf("nobody-at-all", address()));
    }

    @Test
    void a_day_without_failures_forgets_them() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        String address = address();
        fail(user.username(), address, 2);
        bench.clock().forward(Duration.ofHours(25));
        fail(user.username(), address, 2);
        signIn(user.username(), PASSWORD, address);
        bench.clock().forward(Duration.ofHours(25));
        fail("someone-else", address(), 1);
        assertEquals(
                0L,
                bench.value(
                        "select count(*) from sign_in_failure where last_at < cast(? as timestamptz)",
                        bench.clock().instant().minus(Duration.ofHours(24)).toString()),
                "and they are removed");
    }

    @Test
    void failures_of_an_address_count_over_all_usernames_and_one_good_password_does_not_clear_them() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        String address = address();
        for (int i = 0; i < 10; i++) {
            fail("guess" + i, address, 1);
        }
        assertEquals(Duration.ofSeconds(2), waitOf(user.username(), address));
        signIn(user.username(), PASSWORD, address());
        bench.clock().forward(Duration.ofSeconds(2));
        signIn(user.username(), PASSWORD, address);
        fail("guess-again", address, 1);
        assertEquals(Duration.ofSeconds(4), waitOf(user.username(), address));
    }

    @Test
    void many_guesses_at_once_are_no_more_than_a_few() throws Exception {
        User user = AccessFixture.add(bench, Role.OWNER);
        List<Callable<Boolean>> guesses = new ArrayList<>();
        for (int i = 0; i < 24; i++) {
            String address = address();
            guesses.add(() -> {
                try {
                    signIn(user.username(), WRONG, address);
                    return true;
                } catch (AccessRefusal.WrongCredentials checked) {
                    return true;
                } catch (AccessRefusal.TooSoon notChecked) {
                    return false;
                }
            });
        }
        int checked = 0;
        try (ExecutorService pool = Executors.newFixedThreadPool(8)) {
            for (Future<Boolean> guess : pool.invokeAll(guesses)) {
                checked += guess.get() ? 1 : 0;
            }
        }
        assertEquals(3, checked);
    }

    /** The hash is the reference implementation's own, of a cost that is not today's: see AccessPublishedExamplesTest. */
    @Test
    void a_hash_of_another_cost_is_made_anew_at_sign_in() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        User before = bench.get(ReadUsers.class).user(user.id());
        bench.execute(
                "update app_user set password_hash = '$argon2id$v=19$m=65536,t=2,p=1$c29tZXNhbHQ$"
                        + "CTFhFdXPJO1aFaMaO6Mm5c8y7cJHAph8ArZWb2GRPPc' where id = ?",
                user.id().value());
        assertThrows(AccessRefusal.WrongCredentials.class, () -> signIn(user.username(), PASSWORD, address()));
        SignedIn first = signIn(user.username(), "password", address());
        Object hash = bench.value(
                "select password_hash from app_user where id = ?", user.id().value());
        assertTrue(hash.toString().startsWith("$argon2id$v=19$m=19456,t=2,p=1$"), hash.toString());
        assertEquals(first, signIn(user.username(), "password", address()), "the session before goes on");
        assertEquals(
                hash,
                bench.value(
                        "select password_hash from app_user where id = ?",
                        user.id().value()));
        assertEquals(before, bench.get(ReadUsers.class).user(user.id()), "an open form does not lose against it");
    }

    @Test
    void equal_passwords_have_unequal_hashes() {
        User one = AccessFixture.add(bench, Role.OFFICE);
        User other = AccessFixture.add(bench, Role.OFFICE);
        String sql = "select password_hash from app_user where id = ?";
        assertNotEquals(
                bench.value(sql, one.id().value()), bench.value(sql, other.id().value()));
    }
}
