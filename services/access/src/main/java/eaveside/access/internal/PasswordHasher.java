package eaveside.access.internal;

import eaveside.access.AccessRefusal;
import eaveside.access.NewPassword;
import eaveside.access.internal.PasswordHash.Cost;
import jakarta.enterprise.context.ApplicationScoped;
import java.security.SecureRandom;
import java.time.Duration;
import java.util.Optional;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;
import java.util.function.Supplier;

/**
 * Hashes passwords, few at a time: each takes a core and the memory of its cost, so a flood of sign-ins must queue,
 * and past a short queue be turned away, while the rest of the server goes on.
 */
@ApplicationScoped
public class PasswordHasher {
    /**
     * What a new hash costs: 19 MiB, two passes, one lane, the least that the OWASP Password Storage Cheat Sheet
     * recommends for Argon2id. Raise it here: hashes made at another cost are made anew at the next sign-in.
     */
    private static final Cost COST = new Cost(19 * 1024, 2, 1);

    private static final int SALT_BYTES = 16;
    private static final int QUEUE_PER_CORE = 16;
    private static final Duration PATIENCE = Duration.ofSeconds(5);

    private final SecureRandom random = new SecureRandom();
    private final Semaphore cores;
    private final Semaphore seats;

    private final Duration patience;

    /** Half of the cores, so that the other half serves those who are in. */
    public PasswordHasher() {
        this(Math.max(1, Runtime.getRuntime().availableProcessors() / 2), QUEUE_PER_CORE, PATIENCE);
    }

    PasswordHasher(int atOnce, int queuePerCore, Duration patience) {
        this.cores = new Semaphore(atOnce, true);
        this.seats = new Semaphore(Math.max(1, atOnce) * (1 + queuePerCore));
        this.patience = patience;
    }

    /** Refuses with {@link AccessRefusal.Busy}. */
    public String hash(char[] password) {
        return inTurn(
                () -> PasswordHash.of(password, bytes(SALT_BYTES), COST).toString());
    }

    /** Refuses with {@link AccessRefusal.Busy}. An overlong text matches nothing, after as long a look. */
    public boolean matches(char[] password, String stored) {
        boolean overlong = password.length > 2 * NewPassword.LONGEST;
        PasswordHash hash = PasswordHash.parse(overlong ? decoy() : stored);
        return inTurn(() -> hash.matches(overlong ? new char[0] : password));
    }

    /** A hash of the same password at today's cost, where the stored one was made at another. */
    public Optional<String> stronger(char[] password, String stored) {
        return PasswordHash.parse(stored).cost().equals(COST) ? Optional.empty() : Optional.of(hash(password));
    }

    /** A stored hash that no password is known for. */
    public String decoy() {
        return new PasswordHash(COST, bytes(SALT_BYTES), bytes(32)).toString();
    }

    private <T> T inTurn(Supplier<T> work) {
        if (!seats.tryAcquire()) {
            throw new AccessRefusal.Busy();
        }
        try {
            if (!cores.tryAcquire(patience.toMillis(), TimeUnit.MILLISECONDS)) {
                throw new AccessRefusal.Busy();
            }
            try {
                return work.get();
            } finally {
                cores.release();
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new AccessRefusal.Busy();
        } finally {
            seats.release();
        }
    }

    private byte[] bytes(int count) {
        byte[] bytes = new byte[count];
        random.nextBytes(bytes);
        return bytes;
    }
}
