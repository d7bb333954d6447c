package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.LocalDate;
import java.util.List;
import java.util.Optional;
import org.junit.jupiter.api.Test;

class FromDayTest {
    private static final LocalDate TODAY = LocalDate.of(2026, 3, 2);

    private static Optional<LocalDate> instead(LocalDate from, LocalDate... set) {
        return FromDay.earliestInsteadOf(from, List.of(set), TODAY);
    }

    @Test
    void the_first_begins_on_any_day_and_another_may_come_before_it() {
        assertEquals(Optional.empty(), instead(TODAY.minusYears(1)));
        assertEquals(Optional.empty(), instead(TODAY.minusYears(2), TODAY.minusYears(1)));
    }

    @Test
    void any_other_begins_today_or_later() {
        LocalDate first = TODAY.minusYears(1);
        assertEquals(Optional.of(TODAY), instead(TODAY.minusDays(1), first));
        assertEquals(Optional.empty(), instead(TODAY, first));
        assertEquals(Optional.empty(), instead(TODAY.plusDays(9), first, TODAY.plusDays(20)));
    }

    @Test
    void a_day_is_set_again_only_until_it_has_come() {
        LocalDate first = TODAY.minusYears(1);
        assertEquals(Optional.of(TODAY.plusDays(1)), instead(first, first));
        assertEquals(Optional.of(TODAY.plusDays(1)), instead(TODAY, first, TODAY));
        assertEquals(Optional.empty(), instead(TODAY.plusDays(1), first, TODAY.plusDays(1), TODAY.plusDays(1)));
    }
}
