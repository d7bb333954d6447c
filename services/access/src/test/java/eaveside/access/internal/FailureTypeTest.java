package eaveside.access.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class FailureTypeTest {
    private static List<Long> seconds(FailureType type, int from, int to) {
        return IntStream.rangeClosed(from, to)
                .mapToObj(type::waitAfter)
                .map(Duration::toSeconds)
                .toList();
    }

    @Test
    void waits_double_up_to_a_quarter_of_an_hour() {
        assertEquals(
                List.of(0L, 0L, 0L, 2L, 4L, 8L, 16L, 32L, 64L, 128L, 256L, 512L, 900L, 900L),
                seconds(FailureType.USERNAME, 0, 13));
        assertEquals(List.of(0L, 2L, 4L), seconds(FailureType.ADDRESS, 9, 11));
        assertEquals(FailureType.LONGEST, FailureType.USERNAME.waitAfter(Integer.MAX_VALUE));
    }
}
