package eaveside.access;

import eaveside.kernel.Decision;
import java.time.Duration;
import java.time.Instant;

/**
 * How long a session lasts. NIST SP 800-63B-4 asks at AAL2 for a new sign-in after at most 24 hours and after an hour in which
 * nothing was done (section 2.2.3), at AAL1 after 30 days (section 2.1.3). Technicians are held to the second: their phone
 * lies on a roof without signal for hours, and it shows no prices and no costs.
 *
 * @param  idle  without a request
 * @param  whole from its beginning, whatever is done
 */
@Decision
public record SessionLimits(Duration idle, Duration whole) {
    /** How finely it is kept when a session was seen last: not every request writes. */
    public static final Duration STEP = Duration.ofMinutes(1);

    /** Time to find the phone, between the password and what is shown beside it. */
    public static final SessionLimits HALF_SIGNED_IN =
            new SessionLimits(Duration.ofMinutes(10), Duration.ofMinutes(10));

    public static SessionLimits of(Role role) {
        return switch (role) {
            case OWNER, OFFICE -> new SessionLimits(Duration.ofHours(1), Duration.ofHours(24));
            case TECHNICIAN -> new SessionLimits(Duration.ofHours(24), Duration.ofDays(30));
        };
    }

    public boolean allow(Instant began, Instant seen, Instant now) {
        return now.isBefore(began.plus(whole)) && now.isBefore(seen.plus(idle));
    }
}
