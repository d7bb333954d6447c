package eaveside.access.internal;

import com.bastiaanjansen.otp.HMACAlgorithm;
import com.bastiaanjansen.otp.SecretGenerator;
import com.bastiaanjansen.otp.TOTPGenerator;
import eaveside.access.AccessRefusal;
import eaveside.access.AppKey;
import eaveside.access.SessionId;
import eaveside.access.SignedIn;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.net.URI;
import java.net.URISyntaxException;
import java.nio.charset.StandardCharsets;
import java.security.MessageDigest;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Optional;
import java.util.OptionalLong;
import org.jspecify.annotations.Nullable;

/**
 * The codes of authenticator apps: time-based one-time passwords (RFC 6238) of six digits, a new one every 30 seconds, by
 * HMAC-SHA-1 as all apps know it. A code of the step before and of the step after is taken too (RFC 6238, 5.2), and none
 * twice.
 */
@Shared
public class AppCodes {
    private static final Duration STEP = Duration.ofSeconds(30);
    private static final int DIGITS = 6;
    private static final int SECRET_BITS = 160;
    private static final Duration TIME_TO_SET_UP = Duration.ofMinutes(10);

    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public AppCodes(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    public AppKey begin(UserId user, SessionId session, String username, String company) {
        AppRow row = locked(user);
        if (row != null && row.confirmedAt != null) {
            throw new AccessRefusal.AppSetUp();
        }
        String secret = new String(SecretGenerator.generate(SECRET_BITS), StandardCharsets.US_ASCII);
        SessionRow begunIn = entities.getReference(SessionRow.class, session.value());
        if (row == null) {
            entities.persist(new AppRow(user, secret, Moments.asKept(clock.instant()), begunIn));
        } else {
            row.begin(secret, Moments.asKept(clock.instant()), begunIn);
        }
        return key(secret, username, company);
    }

    public AppKey pending(UserId user, SessionId session, String username, String company) {
        return key(unconfirmed(user, session).secret, username, company);
    }

    public SignedIn confirm(UserId user, SessionId session, String code) {
        AppRow row = unconfirmed(user, session);
        row.lastStep = step(row, code).orElseThrow(AccessRefusal.WrongCode::new);
        row.confirmedAt = Moments.asKept(clock.instant());
        entities.flush();
        return entities.find(UserRow.class, user.value()).toStronglySignedIn();
    }

    /** What another session has begun, or was left for too long, is not there. */
    private AppRow unconfirmed(UserId user, SessionId session) {
        AppRow row = locked(user);
        if (row == null
                || row.confirmedAt != null
                || row.begunIn == null
                || !row.begunIn.isThe(session)
                || !Moments.asKept(clock.instant()).isBefore(row.begunAt.plus(TIME_TO_SET_UP))) {
            throw new KernelRefusal.NotFound("authenticator app", user);
        }
        return row;
    }

    /** The user where the code is right; it is not taken again. */
    Optional<SignedIn> take(UserId user, String code) {
        AppRow row = locked(user);
        if (row == null || row.confirmedAt == null) {
            return Optional.empty();
        }
        OptionalLong step = step(row, code);
        if (step.isEmpty()) {
            return Optional.empty();
        }
        row.lastStep = step.getAsLong();
        UserRow signedIn = entities.find(UserRow.class, user.value());
        return signedIn.active ? Optional.of(signedIn.toStronglySignedIn()) : Optional.empty();
    }

    public boolean areSetUp(UserId user) {
        AppRow row = entities.find(AppRow.class, user.value());
        return row != null && row.confirmedAt != null;
    }

    /** Whether there was one. */
    public boolean remove(UserId user) {
        AppRow row = locked(user);
        if (row == null) {
            return false;
        }
        entities.remove(row);
        return true;
    }

    /** The step that the code is of, later than the last one taken. */
    private OptionalLong step(AppRow row, String code) {
        byte[] typed = code.replace(" ", "").getBytes(StandardCharsets.UTF_8);
        Instant now = clock.instant();
        for (int i = -1; i <= 1; i++) {
            Instant at = now.plus(STEP.multipliedBy(i));
            long step = at.getEpochSecond() / STEP.toSeconds();
            byte[] right = code(row.secret, at).getBytes(StandardCharsets.UTF_8);
            if (MessageDigest.isEqual(right, typed) && step > row.lastStep) {
                return OptionalLong.of(step);
            }
        }
        return OptionalLong.empty();
    }

    static String code(String secret, Instant at) {
        return generator(secret).at(at);
    }

    private static TOTPGenerator generator(String secret) {
        return new TOTPGenerator.Builder(secret.getBytes(StandardCharsets.US_ASCII))
                .withHOTPGenerator(hotp -> hotp.withPasswordLength(DIGITS).withAlgorithm(HMACAlgorithm.SHA1))
                .withPeriod(STEP)
                .build();
    }

    static AppKey key(String secret, String username, String company) {
        try {
            URI uri = generator(secret).getURI(company, username);
            // The library writes a blank as forms do; apps show the sign as it stands there (RFC 3986 knows no other
            // blank than %20).
            return new AppKey(secret, uri.toString().replace("+", "%20"));
        } catch (URISyntaxException e) {
            throw new IllegalStateException(e);
        }
    }

    private @Nullable AppRow locked(UserId user) {
        return entities.find(AppRow.class, user.value(), LockModeType.PESSIMISTIC_WRITE);
    }
}
