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
    /** The two sizes that are kept. */
    public enum Size {
        /** Longest side at most 1600 pixels. */
        FULL,
        /** Longest side at most 320 pixels. */
        THUMBNAIL
    }
}
