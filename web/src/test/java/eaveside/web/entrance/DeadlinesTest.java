package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import org.junit.jupiter.api.Test;

class DeadlinesTest {
    @Test
    void a_request_that_hangs_is_ended_and_one_that_is_done_is_left_alone() throws InterruptedException {
        Deadlines deadlines = new Deadlines(Duration.ofMillis(200));
        CountDownLatch hangs = new CountDownLatch(1);
        AtomicBoolean ended = new AtomicBoolean();
        AtomicBoolean clean = new AtomicBoolean();
        Thread request = Thread.ofPlatform().start(() -> {
            deadlines.begins();
            hangs.countDown();
            try {
                TimeUnit.MINUTES.sleep(5);
            } catch (InterruptedException e) {
                ended.set(true);
                Thread.currentThread().interrupt();
            } finally {
                deadlines.ends();
            }
            clean.set(!Thread.currentThread().isInterrupted());
        });
        assertTrue(hangs.await(10, TimeUnit.SECONDS));
        deadlines.sweep();
        request.join(100);
        assertTrue(request.isAlive(), "it has its time");
        TimeUnit.MILLISECONDS.sleep(200);
        deadlines.sweep();
        request.join(10_000);
        assertTrue(ended.get());
        assertTrue(clean.get(), "the thread's next request is not interrupted for it");

        deadlines.begins();
        deadlines.ends();
        TimeUnit.MILLISECONDS.sleep(250);
        deadlines.sweep();
        assertFalse(Thread.currentThread().isInterrupted());
    }
}
