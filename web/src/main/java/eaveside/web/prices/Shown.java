package eaveside.web.prices;

import eaveside.kernel.PriceBookId;
import eaveside.kernel.UserId;
import eaveside.pricing.PriceList;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A price book as a page shows it, published or not.
 *
 * @param  number  null on a draft, as are who published it and when
 * @param  version of a draft; 0 on a published book, which has none
 */
public record Shown(
        PriceBookId id,
        @Nullable Long number,
        int version,
        State state,
        PriceList list,
        @Nullable UserId publishedBy,
        @Nullable Instant publishedAt) {
    /** Where a book stands today. */
    public enum State {
        DRAFT,
        /** Published for a later day. */
        COMING,
        IN_FORCE,
        /** Another book has taken its place. */
        PAST
    }

    public boolean isDraft() {
        return state == State.DRAFT;
    }
}
