package eaveside.access;

import eaveside.access.internal.Sessions;
import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Duration;

/** Begins a session of somebody who has just signed in. */
@Shared
public class BeginSession {
    private final Users users;
    private final Sessions sessions;

    @Inject
    public BeginSession(Users users, Sessions sessions) {
        this.users = users;
        this.sessions = sessions;
    }

    /**
     * What the browser keeps.
     *
     * @param  secret 256 random bits, to be shown with each request
     * @param  whole  how long it may last at most
     */
    public record Begun(SessionId id, String secret, Duration whole) {
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
     */
    @Transactional
    public Begun begin(SignedIn signedIn, String address, String agent) {
        UserRow row = users.required(signedIn.user().id());
        if (!row.admits(signedIn.credentials())) {
            throw new AccessRefusal.WrongCredentials();
        }
        return sessions.begin(row.toUser(), signedIn.credentials(), address, agent);
    }
}
