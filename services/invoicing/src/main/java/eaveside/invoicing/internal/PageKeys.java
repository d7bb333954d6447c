package eaveside.invoicing.internal;

import eaveside.kernel.Decision;
import eaveside.kernel.KernelRefusal;
import java.time.LocalDate;
import java.time.format.DateTimeParseException;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** The keys that lists page by; a key that no page gave out is refused. */
@Decision
public final class PageKeys {
    private static final UUID LAST_ID = UUID.fromString("ffffffff-ffff-ffff-ffff-ffffffffffff");
    private static final UUID FIRST_ID = new UUID(0, 0);
    private static final LocalDate FIRST_DAY = LocalDate.of(1, 1, 1);

    private PageKeys() {}

    /** A day and an id, for lists that go by day. */
    public record DayAndId(LocalDate day, UUID id) {}

    /** For lists by number, newest first. */
    public static long beforeNumber(@Nullable String after) {
        try {
            return after == null ? Long.MAX_VALUE : Long.parseLong(after);
        } catch (NumberFormatException e) {
            throw new KernelRefusal.BadPageKey();
        }
    }

    /** For lists by id, newest first. */
    public static UUID beforeId(@Nullable String after) {
        return after == null ? LAST_ID : id(after, after);
    }

    /** For lists by day, oldest first. */
    public static DayAndId afterDay(@Nullable String after) {
        if (after == null) {
            return new DayAndId(FIRST_DAY, FIRST_ID);
        }
        int split = after.indexOf('_');
        if (split < 0) {
            throw new KernelRefusal.BadPageKey();
        }
        try {
            return new DayAndId(LocalDate.parse(after.substring(0, split)), id(after, after.substring(split + 1)));
        } catch (DateTimeParseException e) {
            throw new KernelRefusal.BadPageKey();
        }
    }

    private static UUID id(String key, String text) {
        try {
            return UUID.fromString(text);
        } catch (IllegalArgumentException e) {
            throw new KernelRefusal.BadPageKey();
        }
    }
}
