package eaveside.ledger;

import eaveside.kernel.DocumentId;
import eaveside.kernel.UserId;
import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A posted document with its entries, and its place in a pair of reversed and reversing. */
public record DocumentView(
        Posted posted,
        LocalDate serviceDate,
        String summary,
        UserId by,
        Instant at,
        @Nullable DocumentId reverses,
        @Nullable DocumentId reversedBy,
        List<EntryLine> entries) {}
