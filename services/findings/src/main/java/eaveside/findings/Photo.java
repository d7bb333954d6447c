package eaveside.findings;

import eaveside.kernel.PhotoId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.time.Instant;

/**
 * A stored photo without its picture.
 *
 * @param  width  pixels of the full size, upright
 * @param  height pixels of the full size, upright
 */
public record Photo(PhotoId id, VisitId visit, int width, int height, UserId by, Instant at) {
    /** Bytes that a photo has at most. */
    public static final int MOST_BYTES = 8 * 1024 * 1024;

    /** Pixels that a photo has at most, by its header. */
    public static final long MOST_PIXELS = 40_000_000;

    /** Pixels that either side has at most. */
    public static final long MOST_PIXELS_ASIDE = 20_000;

    /** The two sizes that are kept. */
    public enum Size {
        /** Longest side at most 1600 pixels. */
        FULL,
        /** Longest side at most 320 pixels. */
        THUMBNAIL
    }
}
