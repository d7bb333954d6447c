package eaveside.access;

import eaveside.kernel.UserId;
import eaveside.testing.Bench;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicInteger;
import org.jspecify.annotations.Nullable;

/** People and addresses that no other test of the class has met. */
final class AccessFixture {
    static final String PASSWORD = "gutters clean by noon";
    private static final AtomicInteger COUNT = new AtomicInteger();

    private AccessFixture() {}

    static User add(Bench bench, Role role) {
        return bench.get(AddUser.class).add(newUser(role, null));
    }

    static AddUser.NewUser newUser(Role role, @Nullable UserId by) {
        int number = COUNT.incrementAndGet();
        return new AddUser.NewUser(
                UserId.next(),
                new Username("person" + number),
                "Person " + number,
                role,
                new NewPassword(PASSWORD),
                by);
    }

    /** From the networks that RFC 5737 keeps for documentation. */
    static String address() {
        return "198.51.100." + COUNT.incrementAndGet();
    }

    /** The secret of a session that begins now. */
    static String session(Bench bench, SignedIn signedIn) {
        return bench.get(BeginSession.class)
                .begin(signedIn, address(), "a browser", null)
                .secret();
    }

    /** Whose session it is; nobody's where it has ended. */
    static Optional<User> resumed(Bench bench, String session) {
        return bench.get(ResumeSession.class).resume(session, false).map(Admitted::user);
    }

    static SignedIn signIn(Bench bench, String username, String password, String address) {
        return bench.get(SignIn.class).signIn(username, password.toCharArray(), address, null);
    }
}
