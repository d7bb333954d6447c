package eaveside.web.entrance;

import static org.junit.jupiter.api.Assertions.assertNotNull;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.UserId;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class SharesTest {
    private final Shares shares = new Shares();

    private List<Shares.Place> taken(@Nullable String credential, int places) {
        List<Shares.Place> taken = new ArrayList<>();
        for (int i = 0; i < places; i++) {
            Shares.Place place = shares.place(credential, "192.0.2." + taken.size() % 5);
            assertNotNull(place, "place " + i);
            taken.add(place);
        }
        return taken;
    }

    @Test
    void strangers_leave_room_for_those_who_are_in() {
        shares.admitted("mine", UserId.next(), Shares.Way.SESSION);
        List<Shares.Place> all = taken(null, Shares.OF_STRANGERS);
        assertNull(shares.place(null, "198.51.100.1"));
        assertNull(shares.place("made up", "198.51.100.1"), "what lets nobody in is worth nothing");
        taken("mine", 3);
        all.getFirst().close();
        taken("made up", 1);
    }

    @Test
    void one_address_leaves_room_for_strangers_elsewhere() {
        List<Shares.Place> all = new ArrayList<>();
        for (int i = 0; i < Shares.OF_ONE_NETWORK; i++) {
            all.add(Objects.requireNonNull(shares.place(null, "192.0.2.9")));
        }
        assertNull(shares.place("made up for each request", "192.0.2.9"));
        assertNotNull(shares.place(null, "192.0.2.10"));
        all.forEach(Shares.Place::close);
        assertNotNull(shares.place(null, "192.0.2.9"));
    }

    @Test
    void what_has_ended_is_a_stranger_again() {
        shares.admitted("mine", UserId.next(), Shares.Way.SESSION);
        shares.ended("mine");
        for (int i = 0; i < Shares.OF_ONE_NETWORK; i++) {
            assertNotNull(shares.place("mine", "192.0.2.9"));
        }
        assertNull(shares.place("mine", "192.0.2.9"));
    }

    @Test
    void one_caller_leaves_room_for_the_others() {
        shares.admitted("mine", UserId.next(), Shares.Way.SESSION);
        shares.admitted("yours", UserId.next(), Shares.Way.SESSION);
        List<Shares.Place> mine = taken("mine", Shares.OF_ONE_CALLER);
        assertNull(shares.place("mine", "198.51.100.1"));
        taken("yours", Shares.OF_ONE_CALLER).forEach(Shares.Place::close);
        mine.forEach(Shares.Place::close);
        taken("mine", Shares.OF_ONE_CALLER);
    }

    /** However often somebody signs in, and whatever their scripts show. */
    @Test
    void all_that_lets_one_user_in_has_one_share() {
        UserId user = UserId.next();
        for (int i = 0; i < Shares.OF_ONE_CALLER; i++) {
            shares.admitted("session " + i, user, Shares.Way.SESSION);
            assertNotNull(shares.place("session " + i, "192.0.2.9"));
        }
        shares.admitted("one more", user, Shares.Way.SESSION);
        assertNull(shares.place("one more", "192.0.2.9"));
        shares.admitted("a script", user, Shares.Way.SCRIPT);
        assertNotNull(shares.place("a script", "192.0.2.9"), "tokens have their own");
        shares.admitted("half", user, Shares.Way.HALF);
        assertNotNull(shares.place("half", "192.0.2.9"), "so has whoever knows no more than the password");
        for (int i = 0; i < Shares.BODIES_OF_ONE_CALLER; i++) {
            assertNotNull(shares.room("session " + i, 300_000));
        }
        assertNull(shares.room("one more", 300_000));
    }

    @Test
    void many_callers_leave_room_for_strangers_too() {
        List<Shares.Place> all = new ArrayList<>();
        for (int i = 0; all.size() < Shares.OF_ALL_CALLERS; i++) {
            shares.admitted("caller " + i, UserId.next(), Shares.Way.SESSION);
            all.addAll(taken("caller " + i, Math.min(Shares.OF_ONE_CALLER, Shares.OF_ALL_CALLERS - all.size())));
        }
        shares.admitted("one more", UserId.next(), Shares.Way.SESSION);
        assertNull(shares.place("one more", "198.51.100.1"));
        taken(null, 1).forEach(Shares.Place::close);
        all.forEach(Shares.Place::close);
        taken("one more", 1);
    }

    @Test
    void bodies_wait_for_one_another_only_where_they_are_large() {
        shares.admitted("mine", UserId.next(), Shares.Way.SESSION);
        shares.admitted("yours", UserId.next(), Shares.Way.SESSION);
        List<Shares.Place> all = new ArrayList<>();
        for (int i = 0; i < Shares.BODIES_OF_ONE_CALLER; i++) {
            all.add(Objects.requireNonNull(shares.room("mine", 2_500_000)));
        }
        assertNull(shares.room("mine", 2_500_000), "others wait beside them, not behind all of one");
        assertNotNull(shares.room("mine", 100_000));
        assertNull(shares.room("made up", 1_200_000), "strangers do not wait");
        all.add(Objects.requireNonNull(shares.room(null, 500_000), "the last megabyte"));
        Thread.currentThread().interrupt(); // as the deadline does
        assertNull(shares.room("yours", 1_000_000), "what waits is ended");
        assertTrue(Thread.interrupted());
        all.getFirst().close();
        assertNotNull(shares.room("yours", 2_500_000));
        all.forEach(Shares.Place::close);
    }

    @Test
    void strangers_do_not_pass_those_who_wait() throws Exception {
        shares.admitted("mine", UserId.next(), Shares.Way.SESSION);
        shares.admitted("yours", UserId.next(), Shares.Way.SESSION);
        Shares.Place first = Objects.requireNonNull(shares.room("mine", 8_000_000));
        try (var thread = Executors.newSingleThreadExecutor()) {
            Future<Shares.@Nullable Place> waits = thread.submit(() -> shares.room("yours", 8_000_000));
            Shares.@Nullable Place passes = shares.room(null, 1_200_000);
            for (int i = 0; i < 2_000 && passes != null; i++) { // until the other waits
                passes.close();
                Thread.sleep(5);
                passes = shares.room(null, 1_200_000);
            }
            assertNull(passes, "though there is room for it");
            first.close();
            Objects.requireNonNull(waits.get()).close();
        }
        Objects.requireNonNull(shares.room(null, 1_200_000)).close();
    }

    @Test
    void the_largest_body_has_room_again_and_again() {
        for (int i = 0; i < 3; i++) {
            Objects.requireNonNull(shares.room(null, Sizes.OF_FILES)).close();
        }
    }
}
