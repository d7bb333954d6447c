package eaveside.pricing;

import eaveside.kernel.PriceBookId;
import eaveside.kernel.UserId;
import java.time.Instant;

/**
 * A published price book; it never changes.
 *
 * @param  number in order of publishing, gapless from 1
 */
public record PriceBook(PriceBookId id, long number, PriceList list, UserId publishedBy, Instant publishedAt) {
    public PriceBook {
        if (list.prices().isEmpty()) {
            throw new PricingRefusal.NothingPriced(list.name());
        }
    }
}
