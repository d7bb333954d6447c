package eaveside.access.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.access.AccessRefusal;
import eaveside.access.NewPassword;
import eaveside.access.internal.PasswordHasher.Caller;
import eaveside.kernel.UserId;
import java.text.Normalizer;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.concurrent.locks.LockSupport;
import org.junit.jupiter.api.Test;

class PasswordHasherTest {
    private final PasswordHasher hasher = new PasswordHasher();

    @Test
    void a_hash_carries_its_cost_and_matches_its_password_only() {
        String hash = hasher.hash("gutters clean by noon".toCharArray());
        assertTrue(hash.startsWith("$argon2id$v=19$m=19456,t=2,p=1$"), hash);
        assertTrue(hasher.matches("gutters clean by noon".toCharArray(), hash));
        assertFalse(hasher.matches("gutters clean by Noon".toCharArray(), hash));
        assertFalse(hasher.matches(new char[0], hash));
        assertTrue(hasher.stronger("gutters clean by noon".toCharArray(), hash).isEmpty());
    }

    @Test
    void an_accent_matches_however_it_was_typed() {
        String password = "café under the eaves";
        String hash =
                hasher.hash(Normalizer.normalize(password, Normalizer.Form.NFD).toCharArray());
        assertTrue(hasher.matches(
                Normalizer.normalize(password, Normalizer.Form.NFC).toCharArray(), hash));
    }

    @Test
    void an_overlong_text_matches_nothing() {
        char[] longest = "x".repeat(2 * NewPassword.LONGEST).toCharArray();
        assertTrue(hasher.matches(longest, hasher.hash(longest)));
        char[] overlong = "x".repeat(2 * NewPassword.LONGEST + 1).toCharArray();
        assertFalse(hasher.matches(overlong, hasher.hash(overlong)), "not even itself");
    }

    @Test
    void a_flood_queues_and_past_the_queue_is_turned_away() throws Exception {
        PasswordHasher small = new PasswordHasher(1, 2, Duration.ofSeconds(30));
        AtomicInteger hashed = new AtomicInteger();
        AtomicInteger busy = new AtomicInteger();
        CountDownLatch start = new CountDownLatch(1);
        Thread[] flood = new Thread[20];
        for (int i = 0; i < flood.length; i++) {
            flood[i] = Thread.startVirtualThread(() -> {
                try {
                    start.await();
                    small.hash("gutters clean by noon".toCharArray());
                    hashed.incrementAndGet();
                } catch (AccessRefusal.Busy refused) {
                    busy.incrementAndGet();
                } catch (InterruptedException e) {
                    Thread.currentThread().interrupt();
                }
            });
        }
        start.countDown();
        for (Thread thread : flood) {
            thread.join();
        }
        assertEquals(flood.length, hashed.get() + busy.get());
        assertTrue(hashed.get() >= 3, () -> hashed + " were hashed");
        assertTrue(busy.get() > 0, () -> busy + " were turned away");
        small.hash("gutters clean by noon".toCharArray());
    }

    @Test
    void who_waits_too_long_is_turned_away() throws Exception {
        PasswordHasher impatient = new PasswordHasher(0, 2, Duration.ofMillis(5));
        assertThrows(AccessRefusal.Busy.class, () -> impatient.hash("gutters clean by noon".toCharArray()));
    }

    /** The one core of strangers is at work for good, and their queue is full. */
    @Test
    void those_who_are_known_wait_for_no_stranger_and_none_of_them_for_another() throws Exception {
        PasswordHasher small = new PasswordHasher(1, 16, Duration.ofSeconds(30));
        String hash = small.hash("gutters clean by noon".toCharArray());
        char[] wrong = "wrong".toCharArray();
        UserId one = UserId.next();
        UserId another = UserId.next();
        AtomicBoolean over = new AtomicBoolean();
        AtomicInteger away = new AtomicInteger();
        List<Thread> flood = new ArrayList<>();
        for (int i = 0; i < 60; i++) {
            Caller caller = i < 40 ? Caller.from("192.0.2." + i % 20) : Caller.user(one);
            flood.add(Thread.ofPlatform().start(() -> {
                while (!over.get()) {
                    try {
                        small.matches(wrong, hash, caller);
                    } catch (AccessRefusal.Busy refused) {
                        away.incrementAndGet();
                        LockSupport.parkNanos(1_000_000);
                    }
                }
            }));
        }
        try {
            for (int i = 0; i < 20; i++) {
                assertTrue(small.matches("gutters clean by noon".toCharArray(), hash, Caller.user(another)));
            }
        } finally {
            over.set(true);
            for (Thread thread : flood) {
                thread.join();
            }
        }
        assertTrue(away.get() > 0, "it was a flood");
    }

    @Test
    void one_network_leaves_room_for_strangers_elsewhere() throws Exception {
        PasswordHasher stopped = new PasswordHasher(0, 16, Duration.ofSeconds(2));
        List<Thread> flood = new ArrayList<>();
        AtomicInteger atOnce = new AtomicInteger();
        for (int i = 0; i < 30; i++) {
            flood.add(Thread.startVirtualThread(() -> {
                long begun = System.nanoTime();
                assertThrows(
                        AccessRefusal.Busy.class,
                        () -> stopped.matches("x".toCharArray(), "y", Caller.from("192.0.2.9")));
                if (System.nanoTime() - begun < 1_000_000_000L) {
                    atOnce.incrementAndGet();
                }
            }));
        }
        for (Thread one : flood) {
            one.join();
        }
        assertEquals(22, atOnce.get(), "of thirty, eight may wait");
    }
}
