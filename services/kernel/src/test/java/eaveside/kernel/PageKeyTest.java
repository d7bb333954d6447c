package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.UUID;
import java.util.function.Function;
import org.junit.jupiter.api.Test;

class PageKeyTest {
    private static final UUID ID = UUID.fromString("018f3c2e-7b1a-7c44-9d2e-5a6b7c8d9e0f");

    @Test
    void a_key_that_a_page_gave_is_read_again() {
        PageKey<LocalDate> day = new PageKey<>(LocalDate.of(2026, 3, 31), ID);
        assertEquals("2026-03-31_" + ID, day.toString());
        assertEquals(day, PageKey.afterDay(day.toString()));
        assertEquals(day, PageKey.beforeDay(day.toString()));
        PageKey<Instant> moment = new PageKey<>(Instant.parse("2026-03-31T15:04:05.123456Z"), ID);
        assertEquals(moment, PageKey.afterMoment(moment.toString()));
        assertEquals(moment, PageKey.beforeMoment(moment.toString()));
        assertEquals(ID, PageKey.afterId(ID.toString()));
        assertEquals(ID, PageKey.beforeId(ID.toString()));
        assertEquals(7, PageKey.afterNumber("7"));
        assertEquals(7, PageKey.beforeNumber("7"));
    }

    @Test
    void without_a_key_a_list_starts_at_its_first_row() {
        LocalDate day = LocalDate.of(2026, 3, 31);
        assertTrue(PageKey.afterDay(null).sort().isBefore(day));
        assertTrue(PageKey.beforeDay(null).sort().isAfter(day));
        Instant moment = Instant.parse("2026-03-31T15:04:05Z");
        assertTrue(PageKey.afterMoment(null).sort().isBefore(moment));
        assertTrue(PageKey.beforeMoment(null).sort().isAfter(moment));
        // The database sorts ids by their digits.
        assertTrue(PageKey.afterId(null).toString().compareTo(ID.toString()) < 0);
        assertTrue(PageKey.beforeId(null).toString().compareTo(ID.toString()) > 0);
        assertTrue(PageKey.afterNumber(null) < 1);
        assertEquals(Long.MAX_VALUE, PageKey.beforeNumber(null));
    }

    @Test
    void a_key_that_no_page_gave_is_malformed_at_its_field() {
        List<Function<String, Object>> lists = List.of(
                PageKey::afterDay,
                PageKey::beforeDay,
                PageKey::afterMoment,
                PageKey::beforeMoment,
                PageKey::afterId,
                PageKey::beforeId,
                PageKey::afterNumber,
                PageKey::beforeNumber);
        for (Function<String, Object> list : lists) {
            for (String key : List.of(
                    "",
                    "soon",
                    "_",
                    "2026-03-31_",
                    "2026-03-31_soon",
                    "soon_" + ID,
                    "\0",
                    ID + "\0",
                    "2026-03-31\0_" + ID)) {
                var refused = assertThrows(KernelRefusal.BadPageKey.class, () -> list.apply(key), key);
                assertEquals(List.of("after"), refused.fields());
            }
        }
    }
}
