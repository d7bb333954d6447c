package eaveside.access.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.access.AccessRefusal;
import eaveside.access.AddUser;
import eaveside.access.NewPassword;
import eaveside.access.ReadUsers;
import eaveside.access.RecordAudit;
import eaveside.access.ResetPassword;
import eaveside.access.Role;
import eaveside.access.SignIn;
import eaveside.access.User;
import eaveside.access.Username;
import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.time.Duration;
import java.util.Optional;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class SignInGateIT {
    private static final String PASSWORD = "gutters clean by noon";
    private static final String ADDRESS = "203.0.113.5";

    @RegisterExtension
    static final Bench bench = new Bench();

    private static User add(String username) {
        return bench.get(AddUser.class)
                .add(new AddUser.NewUser(
                        UserId.next(), new Username(username), "Owner", Role.OWNER, new NewPassword(PASSWORD), null));
    }

    @Test
    void an_attempt_that_found_the_server_busy_is_not_counted() {
        User user = add("busy.owner");
        SignInGate gate = bench.get(SignInGate.class);
        SignIn busy = new SignIn(gate, new PasswordHasher(0, 2, Duration.ofMillis(1)), bench.get(RecordAudit.class));
        for (int i = 0; i < 12; i++) {
            assertThrows(
                    AccessRefusal.Busy.class,
                    () -> busy.signIn(user.username(), PASSWORD.toCharArray(), ADDRESS, null));
        }
        assertEquals(
                user,
                bench.get(SignIn.class)
                        .signIn(user.username(), PASSWORD.toCharArray(), ADDRESS, null)
                        .user());
    }

    @Test
    void a_password_changed_while_the_old_one_was_checked_does_not_let_in() {
        User user = add("racing.owner");
        SignInGate gate = bench.get(SignInGate.class);
        SignInGate.Candidate candidate = gate.admit(user.username(), ADDRESS, null);
        assertTrue(bench.get(PasswordHasher.class).matches(PASSWORD.toCharArray(), candidate.hash()));
        bench.get(ResetPassword.class)
                .reset(
                        user.id(),
                        new NewPassword("skylights after lunch"),
                        bench.get(ReadUsers.class).credentials(user.id()),
                        add("another.owner").id());
        assertTrue(gate.complete(candidate, "sign-in", Optional.empty()).isEmpty());
        assertFalse(candidate.toString().contains("argon2"));
    }
}
