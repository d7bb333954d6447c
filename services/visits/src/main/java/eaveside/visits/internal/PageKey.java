package eaveside.visits.internal;

import eaveside.kernel.Ids;
import eaveside.kernel.KernelRefusal;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Where a page of a list sorted by day and id begins. */
public record PageKey(LocalDate day, UUID id) {
    private static final UUID LOWEST = new UUID(0, 0);
    private static final UUID HIGHEST = new UUID(-1, -1);
    private static final LocalDate EARLY = LocalDate.of(1, 1, 1);
    private static final LocalDate LATE = LocalDate.of(9999, 12, 31);

    /** The key, or before everything where there is none; refuses a key that no page gave out. */
    public static PageKey ascending(@Nullable String after) {
        return after == null ? new PageKey(EARLY, LOWEST) : parse(after);
    }

    /** The key, or after everything where there is none. */
    public static PageKey descending(@Nullable String after) {
        return after == null ? new PageKey(LATE, HIGHEST) : parse(after);
    }

    /** Of a list sorted by id alone. */
    public static UUID idAscending(@Nullable String after) {
        return after == null ? LOWEST : Ids.parse(after);
    }

    public static UUID idDescending(@Nullable String after) {
        return after == null ? HIGHEST : Ids.parse(after);
    }

    private static PageKey parse(String key) {
        String[] parts = key.split("_", 2);
        try {
            return new PageKey(LocalDate.parse(parts[0]), Ids.parse(parts[parts.length - 1]));
        } catch (DateTimeException e) {
            throw new KernelRefusal.BadPageKey();
        }
    }

    @Override
    public String toString() {
        return day + "_" + id;
    }
}
