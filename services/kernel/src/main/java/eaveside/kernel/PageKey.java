package eaveside.kernel;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * The key of the last row of a page, by which the next page starts ({@link Slice#next()}): what the list is sorted by, and
 * the id among rows that are alike in that. A text that no page gave is refused.
 *
 * @param  <S> what the list is sorted by
 */
public record PageKey<S>(S sort, UUID id) {
    private static final UUID LOWEST = new UUID(0, 0);
    private static final UUID HIGHEST = new UUID(-1, -1);
    private static final LocalDate EARLIEST = LocalDate.of(1, 1, 1);
    private static final LocalDate LATEST = LocalDate.of(9999, 12, 31);
    private static final Instant LAST_MOMENT = Instant.parse("9999-12-31T00:00:00Z");

    /** Of a list by day, the earliest first; before all of it where there is no key. */
    public static PageKey<LocalDate> afterDay(@Nullable String key) {
        return key == null ? new PageKey<>(EARLIEST, LOWEST) : parsed(key, LocalDate::parse);
    }

    /** Of a list by day, the latest first. */
    public static PageKey<LocalDate> beforeDay(@Nullable String key) {
        return key == null ? new PageKey<>(LATEST, HIGHEST) : parsed(key, LocalDate::parse);
    }

    /** Of a list by moment, the oldest first. */
    public static PageKey<Instant> afterMoment(@Nullable String key) {
        return key == null ? new PageKey<>(Instant.EPOCH, LOWEST) : parsed(key, Instant::parse);
    }

    /** Of a list by moment, the newest first. */
    public static PageKey<Instant> beforeMoment(@Nullable String key) {
        return key == null ? new PageKey<>(LAST_MOMENT, HIGHEST) : parsed(key, Instant::parse);
    }

    /** Of a list by id, which is by the time that the ids were made, the oldest first. */
    public static UUID afterId(@Nullable String key) {
        return key == null ? LOWEST : read(key, Ids::parse);
    }

    /** Of a list by id, the newest first. */
    public static UUID beforeId(@Nullable String key) {
        return key == null ? HIGHEST : read(key, Ids::parse);
    }

    /** Of a list by number, counted from 1, the lowest first. */
    public static long afterNumber(@Nullable String key) {
        return key == null ? 0 : read(key, Long::parseLong);
    }

    /** Of a list by number, the highest first. */
    public static long beforeNumber(@Nullable String key) {
        return key == null ? Long.MAX_VALUE : read(key, Long::parseLong);
    }

    private static <S> PageKey<S> parsed(String key, Function<String, S> sort) {
        int split = key.indexOf('_');
        if (split < 0) {
            throw new KernelRefusal.BadPageKey();
        }
        return new PageKey<>(read(key.substring(0, split), sort), read(key.substring(split + 1), Ids::parse));
    }

    private static <T> T read(String text, Function<String, T> parse) {
        try {
            return parse.apply(text);
        } catch (DateTimeException | NumberFormatException | KernelRefusal.NotAnId e) {
            throw new KernelRefusal.BadPageKey();
        }
    }

    @Override
    public String toString() {
        return sort + "_" + id;
    }
}
