package eaveside.access;

import eaveside.access.internal.Sessions;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Optional;

/** Asks at each request of a session whether its user may still come in, and as what. */
@Shared
public class ResumeSession {
    private final Sessions sessions;

    @Inject
    public ResumeSession(Sessions sessions) {
        this.sessions = sessions;
    }

    /**
     * The user as they are now, with the role they have now; nobody once the session was ended or has lasted too long
     * ({@link SessionLimits}), and once the user was deactivated or their password changed after it began.
     *
     * @param  secret        as {@link BeginSession} gave it
     * @param  ownersNeedTwo whether owners have to set up a second factor before anything else
     */
    @Transactional
    public Optional<Admitted> resume(String secret, boolean ownersNeedTwo) {
        return sessions.admitted(secret, ownersNeedTwo);
    }
}
