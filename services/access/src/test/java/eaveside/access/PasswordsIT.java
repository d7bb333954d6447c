package eaveside.access;

import static eaveside.access.AccessFixture.PASSWORD;
import static eaveside.access.AccessFixture.address;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.testing.Bench;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class PasswordsIT {
    private static final String OTHER = "skylights after lunch";

    @RegisterExtension
    static final Bench bench = new Bench();

    private static User owner;

    @BeforeAll
    static void owner() {
        owner = AccessFixture.add(bench, Role.OWNER);
    }

    private static boolean goesOn(String session) {
        return AccessFixture.resumed(bench, session).isPresent();
    }

    @Test
    void ones_own_password_changes_and_other_sessions_end() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        String elsewhere =
                AccessFixture.session(bench, AccessFixture.signIn(bench, user.username(), PASSWORD, address()));
        assertTrue(goesOn(elsewhere));
        ChangePassword change = bench.get(ChangePassword.class);
        SignedIn here = change.change(user.id(), PASSWORD.toCharArray(), new NewPassword(OTHER), address(), null, null);
        assertTrue(goesOn(AccessFixture.session(bench, here)));
        assertTrue(!goesOn(elsewhere));
        assertEquals(
                here,
                change.change(user.id(), PASSWORD.toCharArray(), new NewPassword(OTHER), address(), null, null),
                "the same again is a retry");
        assertEquals(here, AccessFixture.signIn(bench, user.username(), OTHER, address()));
        assertThrows(
                AccessRefusal.WrongCredentials.class,
                () -> AccessFixture.signIn(bench, user.username(), PASSWORD, address()));
    }

    @Test
    void the_password_that_one_has_is_no_new_one() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        NewPassword same = new NewPassword(PASSWORD);
        assertThrows(
                AccessRefusal.WeakPassword.class,
                () -> bench.get(ChangePassword.class)
                        .change(user.id(), PASSWORD.toCharArray(), same, address(), null, null));
    }

    @Test
    void guessing_the_old_password_in_an_open_session_waits_like_a_sign_in() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        ChangePassword change = bench.get(ChangePassword.class);
        char[] guess = "not the old password".toCharArray();
        String address = address();
        for (int i = 0; i < 3; i++) {
            assertThrows(
                    AccessRefusal.WrongCredentials.class,
                    () -> change.change(user.id(), guess, new NewPassword(OTHER), address, null, null));
        }
        assertThrows(
                AccessRefusal.TooSoon.class,
                () -> change.change(user.id(), PASSWORD.toCharArray(), new NewPassword(OTHER), address, null, null));
        assertEquals(
                3L,
                bench.value(
                        "select count(*) from audit_event where action = 'password.change' and outcome = 'REFUSED'"
                                + " and user_id = ? and address = ?",
                        user.id().value(),
                        address));
    }

    @Test
    void a_password_like_the_username_or_name_is_refused() {
        User user = AccessFixture.add(bench, Role.TECHNICIAN);
        assertThrows(AccessRefusal.WeakPassword.class, () -> reset(user, "abc " + user.username() + " xyz"));
    }

    @Test
    void a_reset_ends_sessions_and_forgets_failures() {
        User user = AccessFixture.add(bench, Role.OFFICE);
        SignedIn before = AccessFixture.signIn(bench, user.username(), PASSWORD, address());
        String session = AccessFixture.session(bench, before);
        assertTrue(goesOn(session));
        for (int i = 0; i < 3; i++) {
            assertThrows(
                    AccessRefusal.WrongCredentials.class,
                    () -> AccessFixture.signIn(bench, user.username(), OTHER, address()));
        }
        reset(user, OTHER);
        assertTrue(!goesOn(session));
        SignedIn again = AccessFixture.signIn(bench, user.username(), OTHER, address());
        assertNotEquals(before.credentials(), again.credentials());
        assertThrows(
                AccessRefusal.WrongCredentials.class,
                () -> AccessFixture.session(bench, before),
                "a password checked before the reset begins no session after it");
    }

    @Test
    void a_password_that_somebody_else_made_up_is_good_for_choosing_ones_own() {
        User user = bench.get(AddUser.class).add(AccessFixture.newUser(Role.OFFICE, owner.id()));
        assertEquals(Duty.NEW_PASSWORD, dutyOf(user, PASSWORD));
        bench.get(ChangePassword.class)
                .change(user.id(), PASSWORD.toCharArray(), new NewPassword(OTHER), address(), null, null);
        assertNull(dutyOf(user, OTHER));
        reset(user, PASSWORD);
        assertEquals(Duty.NEW_PASSWORD, dutyOf(user, PASSWORD));
        String session =
                AccessFixture.session(bench, AccessFixture.signIn(bench, user.username(), PASSWORD, address()));
        reset(user, PASSWORD);
        assertTrue(goesOn(session), "the same again is a retry");
        reset(user, OTHER);
        assertTrue(!goesOn(session));
        int replaces = bench.get(ReadUsers.class).credentials(user.id());
        bench.get(ChangePassword.class)
                .change(user.id(), OTHER.toCharArray(), new NewPassword(PASSWORD + " more"), address(), null, null);
        assertThrows(
                AccessRefusal.CredentialsChanged.class,
                () -> bench.get(ResetPassword.class).reset(user.id(), new NewPassword(OTHER), replaces, owner.id()),
                "the page that did it before is sent again");
        assertNull(dutyOf(user, PASSWORD + " more"), "their own is still good");
        assertNull(dutyOf(AccessFixture.add(bench, Role.OFFICE), PASSWORD), "typed at the command line");
    }

    private static @Nullable Duty dutyOf(User user, String password) {
        String session =
                AccessFixture.session(bench, AccessFixture.signIn(bench, user.username(), password, address()));
        return bench.get(ResumeSession.class)
                .resume(session, false)
                .orElseThrow()
                .duty();
    }

    @Test
    void a_reset_and_a_recovery_end_tokens() {
        User user = AccessFixture.add(bench, Role.OWNER);
        IssueToken issue = bench.get(IssueToken.class);
        AuthenticateToken authenticate = bench.get(AuthenticateToken.class);
        String first = issue.issue(new NewToken(TokenId.next(), user.id(), "export", TokenScope.READ, 30, null))
                .secret();
        assertEquals(user, authenticate.authenticate(first).user());
        reset(user, OTHER);
        assertThrows(AccessRefusal.BadToken.class, () -> authenticate.authenticate(first));
        String second = issue.issue(new NewToken(TokenId.next(), user.id(), "export", TokenScope.READ, 30, null))
                .secret();
        bench.get(RecoverOwner.class).recover(new Username(user.username()), new NewPassword(PASSWORD));
        assertThrows(AccessRefusal.BadToken.class, () -> authenticate.authenticate(second));
    }

    @Test
    void the_command_line_lets_an_owner_in_again() {
        User lost = AccessFixture.add(bench, Role.OWNER);
        bench.get(DeactivateUser.class).deactivate(lost.id(), owner.id());
        for (int i = 0; i < 3; i++) {
            assertThrows(
                    AccessRefusal.WrongCredentials.class,
                    () -> AccessFixture.signIn(bench, lost.username(), OTHER, address()));
        }
        String generated = bench.get(GeneratePassword.class).generate();
        RecoverOwner recover = bench.get(RecoverOwner.class);
        User recovered = recover.recover(new Username(lost.username()), new NewPassword(generated));
        assertTrue(recovered.active());
        assertEquals(
                recovered,
                AccessFixture.signIn(bench, lost.username(), generated, address())
                        .user());
        AuditLine line = bench.get(ReadAudit.class)
                .lines(new AuditFilter(null, "owner.recovered", null, null, null), null, 1)
                .rows()
                .getFirst();
        assertEquals(lost.username(), line.subject());
        assertEquals("", line.byName());

        User office = AccessFixture.add(bench, Role.OFFICE);
        assertThrows(
                AccessRefusal.NotAnOwner.class,
                () -> recover.recover(new Username(office.username()), new NewPassword(generated)));
        assertThrows(
                KernelRefusal.NotFound.class,
                () -> recover.recover(new Username("nobody-here"), new NewPassword(generated)));
        AccessFixture.signIn(bench, office.username(), PASSWORD, address());
    }

    @Test
    void nobody_resets_what_they_sign_in_with_themselves() {
        int replaces = bench.get(ReadUsers.class).credentials(owner.id());
        assertThrows(
                AccessRefusal.OwnReset.class,
                () -> bench.get(ResetPassword.class).reset(owner.id(), new NewPassword(OTHER), replaces, owner.id()));
        assertThrows(
                AccessRefusal.OwnReset.class,
                () -> bench.get(ResetSecondFactors.class).reset(owner.id(), replaces, owner.id()));
    }

    private void reset(User user, String password) {
        int replaces = bench.get(ReadUsers.class).credentials(user.id());
        bench.get(ResetPassword.class).reset(user.id(), new NewPassword(password), replaces, owner.id());
    }
}
