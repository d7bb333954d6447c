package eaveside.pricing;

import eaveside.kernel.PriceBookId;
import eaveside.kernel.UserId;
import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * A price book to read, published or not.
 *
 * @param  number  null on a draft, as are who published it and when
 * @param  version of a draft, for the next edit; 0 on a published book, which never changes
 */
public record PriceBookView(
        PriceBookId id,
        @Nullable Long number,
        PriceBookStatus status,
        PriceList list,
        int version,
        @Nullable UserId publishedBy,
        @Nullable Instant publishedAt) {
    public boolean isDraft() {
        return status == PriceBookStatus.DRAFT;
    }
}
