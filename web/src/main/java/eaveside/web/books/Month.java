package eaveside.web.books;

import eaveside.ledger.ReadVariances.Variance;
import java.time.Instant;
import java.time.YearMonth;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A month of the books, as its page and scripts see it.
 *
 * @param  closedAt  null while it is open
 * @param  closable  whether it is over, and the oldest that is open
 * @param  stillOpen what closing it leaves for later months
 */
public record Month(
        YearMonth month, @Nullable Instant closedAt, boolean closable, List<Variance> variances, StillOpen stillOpen) {}
