package eaveside.access;

import eaveside.access.internal.Sessions;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/** Where a user is signed in. */
@Shared
public class ReadSessions {
    private final Sessions sessions;

    @Inject
    public ReadSessions(Sessions sessions) {
        this.sessions = sessions;
    }

    /** Those that still let in, the one begun last first. */
    @Transactional
    public List<Session> of(UserId user) {
        return sessions.open(user);
    }
}
