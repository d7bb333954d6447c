package eaveside.findings.internal;

import eaveside.kernel.KernelRefusal;
import java.time.DateTimeException;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Where a page of a list sorted by the moment of seeing and the id begins. */
public record PageKey(Instant at, UUID id) {
    private static final PageKey FIRST = new PageKey(Instant.EPOCH, new UUID(0, 0));
    private static final PageKey LAST = new PageKey(Instant.parse("9999-12-31T00:00:00Z"), new UUID(-1, -1));

    /** The key, or before everything where there is none; refuses a key that no page gave out. */
    public static PageKey ascending(@Nullable String after) {
        return after == null ? FIRST : parse(after);
    }

    /** The key, or after everything where there is none. */
    public static PageKey descending(@Nullable String after) {
        return after == null ? LAST : parse(after);
    }

    private static PageKey parse(String key) {
        String[] parts = key.split("_", 2);
        try {
            return new PageKey(Instant.parse(parts[0]), UUID.fromString(parts[parts.length - 1]));
        } catch (DateTimeException | IllegalArgumentException e) {
            throw new KernelRefusal.BadPageKey();
        }
    }

    @Override
    public String toString() {
        return at + "_" + id;
    }
}
