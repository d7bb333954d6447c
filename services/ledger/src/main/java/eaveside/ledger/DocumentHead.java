package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.UserId;
import java.time.Instant;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** What a posted document is, without its entries. */
public record DocumentHead(
        Posted posted,
        LocalDate serviceDate,
        String summary,
        UserId by,
        Instant at,
        @Nullable DocumentId reversedBy) {}
