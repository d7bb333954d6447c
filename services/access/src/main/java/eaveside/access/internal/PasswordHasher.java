package eaveside.access.internal;

import eaveside.access.AccessRefusal;
import eaveside.access.NewPassword;
import eaveside.kernel.Network;
import eaveside.kernel.Places;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.ApplicationScoped;
import java.nio.CharBuffer;
import java.security.SecureRandom;
import java.text.Normalizer;
import java.time.Duration;
import java.util.Base64;
import java.util.Objects;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;
import org.springframework.security.crypto.argon2.Argon2PasswordEncoder;

/**
 * Hashes passwords, few at a time: each takes a core and the memory of its cost, so a flood of sign-ins must queue,
 * and past a short queue be turned away, while the rest of the server goes on.
 */
@ApplicationScoped
public class PasswordHasher {
    /**
     * Argon2id (RFC 9106) at 19 MiB, two passes, one lane, the least that the OWASP Password Storage Cheat Sheet recommends.
     * Change it here: hashes made at another cost are made anew at the next sign-in.
     */
    private static final Argon2PasswordEncoder ARGON = new Argon2PasswordEncoder(16, 32, 1, 19 * 1024, 2);

    /** How a hash of that cost begins, in the form of the reference implementation. */
    private static final String COST = "$argon2id$v=19$m=19456,t=2,p=1$";

    private static final int QUEUE_PER_CORE = 16;
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    /** Of those who are known: what they ask for is done one after the other. */
    private static final int MOST_OF_ONE = 3;

    /** Of all who ask from one network and show nothing that is known. */
    private static final int MOST_OF_STRANGERS = 8;

    private final SecureRandom random = new SecureRandom();
    private final Lane strangers;
    private final Lane known;
    private final Places asking = new Places();

    private final Duration patience;

    private record Lane(Semaphore cores, Semaphore seats) {
        Lane(int atOnce, int queuePerCore) {
            this(new Semaphore(atOnce, true), new Semaphore(Math.max(1, atOnce) * (1 + queuePerCore)));
        }
    }

    /**
     * Who has a password looked at. Those who are known have a queue of their own, in which each user has few places for all that
     * they try: no flood of strangers makes any of them wait, and none of them another for long.
     *
     * @param  isKnown by a session, or by a browser that its user has signed in with before
     */
    public record Caller(String name, boolean isKnown) {
        public static Caller user(UserId user) {
            return new Caller("user " + user, true);
        }

        static Caller from(String address) {
            return new Caller("network " + Network.of(address), false);
        }
    }

    /** Half of the cores for strangers, so that the other half serves those who are in, whose passwords have as many. */
    public PasswordHasher() {
        this(Math.max(1, Runtime.getRuntime().availableProcessors() / 2), QUEUE_PER_CORE, PATIENCE);
    }

    PasswordHasher(int atOnce, int queuePerCore, Duration patience) {
        this.strangers = new Lane(atOnce, queuePerCore);
        this.known = new Lane(atOnce, queuePerCore);
        this.patience = patience;
    }

    /** Refuses with {@link AccessRefusal.Busy}. */
    public String hash(char[] password) {
        return inTurn(known, () -> Objects.requireNonNull(ARGON.encode(normalized(password))));
    }

    /** Refuses with {@link AccessRefusal.Busy}. An overlong text matches nothing, after as long a look. */
    public boolean matches(char[] password, String stored, Caller caller) {
        if (!asking.enters(caller.name(), caller.isKnown() ? MOST_OF_ONE : MOST_OF_STRANGERS)) {
            throw new AccessRefusal.Busy();
        }
        try {
            return matches(password, stored, caller.isKnown() ? known : strangers);
        } finally {
            asking.leaves(caller.name());
        }
    }

    /** What somebody who is in asks about another's. Refuses likewise. */
    public boolean matches(char[] password, String stored) {
        return matches(password, stored, known);
    }

    private boolean matches(char[] password, String stored, Lane lane) {
        boolean overlong = password.length > 2 * NewPassword.LONGEST;
        return inTurn(
                lane, () -> ARGON.matches(overlong ? "overlong" : normalized(password), overlong ? decoy() : stored));
    }

    /** A hash of the same password at today's cost, where the stored one was made at another. */
    public Optional<String> stronger(char[] password, String stored) {
        return stored.startsWith(COST) ? Optional.empty() : Optional.of(hash(password));
    }

    /** A stored hash that no password is known for. */
    public String decoy() {
        return COST + bytes(16) + "$" + bytes(32);
    }

    /** The same password typed on another keyboard must give the same bytes: NIST SP 800-63B-4 §3.1.1.2 (NFC or NFKC). */
    private static String normalized(char[] password) {
        return Normalizer.normalize(CharBuffer.wrap(password), Normalizer.Form.NFKC);
    }

    private <T> T inTurn(Lane lane, Supplier<T> work) {
        if (!lane.seats().tryAcquire()) {
            throw new AccessRefusal.Busy();
        }
        try {
            if (!lane.cores().tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS)) {
                throw new AccessRefusal.Busy();
            }
            try {
                return work.get();
            } finally {
                lane.cores().release();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AccessRefusal.Busy();
        } finally {
            lane.seats().release();
        }
    }

    private String bytes(int count) {
        byte[] bytes = new byte[count];
        random.nextBytes(bytes);
        return Base64.getEncoder().withoutPadding().encodeToString(bytes);
    }
}
