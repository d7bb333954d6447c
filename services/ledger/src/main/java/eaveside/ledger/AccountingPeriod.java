package eaveside.ledger;

import java.time.Instant;
import java.time.YearMonth;
import org.jspecify.annotations.Nullable;

/** A month of the books. */
public record AccountingPeriod(YearMonth month, @Nullable Instant closedAt) {}
