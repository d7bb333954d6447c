package eaveside.access;

import static eaveside.access.AccessFixture.PASSWORD;
import static eaveside.access.AccessFixture.address;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.access.internal.SignInGate;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Refusal;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class UsersIT {
    @RegisterExtension
    static final Bench bench = new Bench();

    private static List<Object> outcomes(List<? extends Callable<?>> calls) throws InterruptedException {
        List<Object> outcomes = new ArrayList<>();
        try (ExecutorService pool = Executors.newFixedThreadPool(calls.size())) {
            List<Callable<Object>> named = new ArrayList<>();
            calls.forEach(call -> named.add(() -> {
                try {
                    call.call();
                    return "done";
                } catch (Refusal refusal) {
                    return refusal.code();
                }
            }));
            for (Future<Object> future : pool.invokeAll(named)) {
                outcomes.add(future.resultNow());
            }
        }
        outcomes.sort(null);
        return outcomes;
    }

    @Test
    void the_same_user_sent_again_is_added_once() {
        AddUser add = bench.get(AddUser.class);
        AddUser.NewUser asked = AccessFixture.newUser(Role.OWNER, null);
        User first = add.add(asked);
        assertEquals(first, add.add(asked));
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> add.add(new AddUser.NewUser(
                        asked.id(), asked.username(), "Someone else", Role.OWNER, asked.password(), null)));
        assertThrows(
                KernelRefusal.IdTaken.class,
                () -> add.add(new AddUser.NewUser(
                        asked.id(),
                        asked.username(),
                        asked.name(),
                        Role.OWNER,
                        new NewPassword("another long password"),
                        null)));
        assertThrows(
                KernelRefusal.Taken.class,
                () -> add.add(new AddUser.NewUser(
                        UserId.next(), asked.username(), asked.name(), Role.OWNER, asked.password(), null)));
        assertEquals(1L, bench.value("select count(*) from app_user where username = ?", first.username()));
        assertEquals(
                1L,
                bench.value(
                        "select count(*) from audit_event where action = 'user.added' and subject = ?",
                        first.username()));
    }

    @Test
    void of_two_who_want_one_username_at_once_one_gets_it() throws Exception {
        AddUser.NewUser one = AccessFixture.newUser(Role.OFFICE, null);
        AddUser.NewUser other =
                new AddUser.NewUser(UserId.next(), one.username(), "Rival", Role.OFFICE, one.password(), null);
        AddUser add = bench.get(AddUser.class);
        assertEquals(
                List.of("done", "user.username-taken"), outcomes(List.of(() -> add.add(one), () -> add.add(other))));
    }

    @Test
    void people_are_found_by_id_username_and_role() {
        ReadUsers users = bench.get(ReadUsers.class);
        User owner = AccessFixture.add(bench, Role.OWNER);
        User technician = AccessFixture.add(bench, Role.TECHNICIAN);
        User gone = AccessFixture.add(bench, Role.TECHNICIAN);
        bench.get(DeactivateUser.class).deactivate(gone.id(), owner.id());
        assertTrue(users.areThereAny());
        assertEquals(owner, users.byUsername(" " + owner.username() + " ").orElseThrow());
        assertTrue(users.byUsername("no such username").isEmpty());
        assertTrue(users.technicians().contains(technician));
        assertTrue(users.technicians().stream().noneMatch(u -> u.id().equals(gone.id())));
        assertTrue(users.all().stream().anyMatch(u -> u.id().equals(gone.id()) && !u.active()));
        assertEquals(gone.name(), users.nameOf(gone.id()));
        assertEquals(
                Map.of(owner.id(), owner.name(), gone.id(), gone.name()),
                users.namesOf(List.of(owner.id(), gone.id(), owner.id(), UserId.next())));
        assertThrows(KernelRefusal.NotFound.class, () -> users.user(UserId.next()));
    }

    @Test
    void deactivation_ends_sessions_tokens_and_sign_in() {
        User owner = AccessFixture.add(bench, Role.OWNER);
        User user = AccessFixture.add(bench, Role.OFFICE);
        String session =
                AccessFixture.session(bench, AccessFixture.signIn(bench, user.username(), PASSWORD, address()));
        assertTrue(AccessFixture.resumed(bench, session).isPresent());
        IssueToken.Issued token = bench.get(IssueToken.class)
                .issue(new NewToken(TokenId.next(), user.id(), "export", TokenScope.READ, 30, user.id()));
        DeactivateUser deactivate = bench.get(DeactivateUser.class);
        deactivate.deactivate(user.id(), owner.id());
        deactivate.deactivate(user.id(), owner.id());
        assertTrue(AccessFixture.resumed(bench, session).isEmpty());
        assertThrows(
                AccessRefusal.BadToken.class,
                () -> bench.get(AuthenticateToken.class).authenticate(token.secret()));
        assertThrows(
                AccessRefusal.WrongCredentials.class,
                () -> AccessFixture.signIn(bench, user.username(), PASSWORD, address()));
        User gone = bench.get(ReadUsers.class).user(user.id());
        bench.get(ChangeUser.class).change(gone.with(user.role(), true), owner.id());
        AccessFixture.signIn(bench, user.username(), PASSWORD, address());
        assertTrue(AccessFixture.resumed(bench, session).isEmpty(), "an ended session stays ended");
        assertThrows(
                AccessRefusal.BadToken.class,
                () -> bench.get(AuthenticateToken.class).authenticate(token.secret()),
                "a revoked token stays revoked");
    }

    @Test
    void of_two_changes_of_one_user_the_later_is_told() {
        User owner = AccessFixture.add(bench, Role.OWNER);
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        ChangeUser change = bench.get(ChangeUser.class);
        String session =
                AccessFixture.session(bench, AccessFixture.signIn(bench, user.username(), PASSWORD, address()));
        assertEquals(1, user.version());
        User first = new User(user.id(), user.username(), "Newly Named", Role.OFFICE, true, 1);
        User changed = change.change(first, owner.id());
        assertEquals(2, changed.version());
        assertEquals(changed, change.change(first, owner.id()), "the same again is a retry");
        User other = new User(user.id(), user.username(), "Otherwise Named", Role.OFFICE, true, 1);
        KernelRefusal.Stale refused = assertThrows(KernelRefusal.Stale.class, () -> change.change(other, owner.id()));
        assertEquals(changed, refused.theirs());
        User renamed = new User(user.id(), "another.name", "Newly Named", Role.OFFICE, true, 2);
        assertThrows(KernelRefusal.Fixed.class, () -> change.change(renamed, owner.id()));
        assertEquals(
                Role.OFFICE,
                AccessFixture.resumed(bench, session).orElseThrow().role(),
                "a session has the role of now");
    }

    @Test
    void the_last_owner_stays() throws Exception {
        for (User owner : bench.get(ReadUsers.class).all()) {
            bench.execute("alter table app_user disable trigger app_user_keeps_owner");
            bench.execute(
                    "update app_user set active = false where id = ?",
                    owner.id().value());
            bench.execute("alter table app_user enable trigger app_user_keeps_owner");
        }
        User one = AccessFixture.add(bench, Role.OWNER);
        User other = AccessFixture.add(bench, Role.OWNER);
        DeactivateUser deactivate = bench.get(DeactivateUser.class);
        assertEquals(
                List.of("access.last-owner", "done"),
                outcomes(List.of(
                        () -> deactivate.deactivate(one.id(), other.id()),
                        () -> deactivate.deactivate(other.id(), one.id()))));
        ReadUsers users = bench.get(ReadUsers.class);
        User left = users.user(one.id()).active() ? users.user(one.id()) : users.user(other.id());
        assertThrows(
                AccessRefusal.LastOwner.class,
                () -> bench.get(ChangeUser.class).change(left.with(Role.OFFICE, true), left.id()));
        SQLException refused = assertThrows(
                SQLException.class,
                () -> bench.executeAsApplication("update app_user set role = 'OFFICE' where role = 'OWNER'"));
        assertTrue(refused.getMessage().contains("last active owner"), refused.getMessage());
    }

    @Test
    void the_application_may_neither_rename_a_username_nor_remove_a_user() {
        AccessFixture.add(bench, Role.OWNER);
        for (String sql : List.of(
                "update app_user set username = 'other'",
                "update app_user set id = gen_random_uuid()",
                "delete from app_user",
                "truncate app_user cascade")) {
            SQLException refused = assertThrows(SQLException.class, () -> bench.executeAsApplication(sql), sql);
            assertTrue(refused.getMessage().contains("permission denied"), sql + ": " + refused.getMessage());
        }
    }

    @Test
    void no_password_and_no_hash_shows_in_text() {
        AddUser.NewUser asked = AccessFixture.newUser(Role.OWNER, null);
        assertFalse(asked.toString().contains(PASSWORD), asked.toString());
        assertFalse(asked.password().toString().contains(PASSWORD));
        String hash = (String) bench.value("select min(password_hash) from app_user");
        assertTrue(hash.startsWith("$argon2id$"), hash);
        var candidate = new SignInGate.Candidate("a.user", "192.0.2.1", UserId.next(), hash, 0, null);
        assertFalse(candidate.toString().contains(hash), candidate.toString());
    }
}
