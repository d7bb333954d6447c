package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.ledger.DocumentHead;
import eaveside.ledger.ReadLedger;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** The sheets of a visit that were signed and reversed before the one in hand. */
@Shared
class EarlierSheets {
    private final VisitQueries queries;
    private final ReadLedger readLedger;

    @Inject
    public EarlierSheets(VisitQueries queries, ReadLedger readLedger) {
        this.queries = queries;
        this.readLedger = readLedger;
    }

    /** The day on which the last of them gave its goods back; null where none was reversed. */
    public @Nullable LocalDate lastReversalOf(VisitId visit) {
        List<DocumentId> sheets =
                queries.sheetsOf(visit).stream().map(SheetRow::document).toList();
        List<DocumentId> reversals = readLedger.heads(sheets).stream()
                .map(DocumentHead::reversedBy)
                .filter(Objects::nonNull)
                .toList();
        return readLedger.heads(reversals).stream()
                .map(head -> head.posted().postingDate())
                .max(Comparator.naturalOrder())
                .orElse(null);
    }
}
