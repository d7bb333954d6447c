package eaveside.visits.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.SentSheetId;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.SentSheet;
import eaveside.visits.SheetToRecord;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** The sheets that were sent and did not become their visits'. */
@Shared
public class SentSheets {
    private static final int HEX_OF_A_KEY = 15;

    private final EntityManager entities;
    private final VisitQueries queries;
    private final Clock clock;

    @Inject
    public SentSheets(EntityManager entities, VisitQueries queries, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.clock = clock;
    }

    /** What this sender sent before in the same words. Whoever sends the same at the same time waits for the other's commit. */
    public Optional<SentSheetRow> find(VisitId visit, UserId by, Fingerprint fingerprint) {
        queries.takeTurn(Long.parseLong(fingerprint.hex().substring(0, HEX_OF_A_KEY), 16));
        return queries.sentSheets(visit, by, fingerprint.hex()).stream().findFirst();
    }

    public SentSheetRow add(SheetToRecord sent, Fingerprint fingerprint) {
        SentSheetRow row =
                new SentSheetRow(SentSheetId.next(), sent, freeId(sent.sheet()), fingerprint, clock.instant());
        entities.persist(row);
        entities.flush();
        return row;
    }

    /** The id unless a sheet was posted under it already: then this is another sheet, and that one does not settle it. */
    private @Nullable DocumentId freeId(@Nullable DocumentId sheet) {
        return sheet == null || entities.find(SheetRow.class, sheet.value()) != null ? null : sheet;
    }

    /** Refuses an unknown id. */
    public SentSheetRow required(SentSheetId id) {
        SentSheetRow row = entities.find(SentSheetRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("sent job sheet", id);
        }
        return row;
    }

    /** The same, and whoever else asks for it so waits until the transaction ends. */
    public SentSheetRow locked(SentSheetId id) {
        queries.takeTurn(id.value().getLeastSignificantBits());
        return required(id);
    }

    public SentSheet view(SentSheetRow row) {
        SentSheetReadRow read = entities.find(SentSheetReadRow.class, row.id);
        return new SentSheet(
                row.id(),
                row.visitId,
                row.sentBy,
                row.sentAt,
                row.refusal,
                row.urgent,
                queries.laterThan(row.id) > 0,
                read == null ? null : read.toReading(),
                row.fields());
    }
}
