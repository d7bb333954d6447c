package eaveside.access;

import eaveside.access.internal.UserRow;
import eaveside.access.internal.Users;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Optional;

/** Asks at each request of a session whether its user may still come in, and as what. */
@Shared
public class ResumeSession {
    private final Users users;

    @Inject
    public ResumeSession(Users users) {
        this.users = users;
    }

    /**
     * The user as they are now, with the role they have now; nobody once they were deactivated or their password
     * changed after this session began.
     *
     * @param  credentials of the {@link SignedIn} that began the session
     */
    @Transactional
    public Optional<Admitted> resume(UserId id, int credentials) {
        UserRow row = users.find(id);
        return row != null && row.admits(credentials) ? Optional.of(row.toAdmitted()) : Optional.empty();
    }
}
