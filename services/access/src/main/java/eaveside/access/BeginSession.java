package eaveside.access;

import eaveside.access.internal.Browsers;
import eaveside.access.internal.Secrets;
import eaveside.access.internal.Sessions;
import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;
import org.jspecify.annotations.Nullable;

/** Begins a session of somebody who has just signed in. */
@Shared
public class BeginSession {
    /** How long a browser is known after its user has signed in there. */
    public static final Duration BROWSER_KNOWN = Browsers.REMEMBERED;

    private final Users users;
    private final Sessions sessions;
    private final Browsers browsers;

    @Inject
    public BeginSession(Users users, Sessions sessions, Browsers browsers) {
        this.users = users;
        this.browsers = browsers;
        this.sessions = sessions;
    }

    /**
     * What the browser keeps.
     *
     * @param  secret  256 random bits, to be shown with each request
     * @param  whole   how long it may last at most
     * @param  browser by which the browser is known from now on, for as long as {@link #BROWSER_KNOWN} after each sign-in
     */
    public record Begun(SessionId id, String secret, Duration whole, String browser) {
        /** Never the secret. */
        @Override
        public String toString() {
            return "session " + id;
        }
    }

    /**
     * Refuses with {@link AccessRefusal.WrongCredentials} where the user was deactivated or got another password since.
     *
     * @param  address the network address that it comes from
     * @param  agent   as the browser calls itself
     * @param  browser the secret by which it may be known already; null for none
     */
    @Transactional
    public Begun begin(SignedIn signedIn, String address, String agent, @Nullable String browser) {
        UserRow row = users.required(signedIn.user().id());
        if (!row.admits(signedIn.credentials())) {
            throw new AccessRefusal.WrongCredentials();
        }
        User user = row.toUser();
        String secret = Secrets.random();
        SessionId id = sessions.begin(signedIn, secret, address, agent);
        return new Begun(id, secret, SessionLimits.of(user.role()).whole(), browsers.know(signedIn, browser));
    }
}
