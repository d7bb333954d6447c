package eaveside.pricing;

import eaveside.kernel.PriceBookId;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A book in a list.
 *
 * @param  number null on a draft
 * @param  from   the first day that it is in force
 */
public record PriceBookSummary(
        PriceBookId id, @Nullable Long number, String name, LocalDate from, PriceBookStatus status) {}
