package eaveside.invoicing.internal;

import eaveside.access.Edits;
import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSetting;
import eaveside.catalog.TaxSettings;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.Draft;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.LineOrigin;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.visits.BillableVisit.Billable;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Keeps drafts: a row with its lines, allowances and charges, rewritten as a whole by an edit. */
@Shared
public class Drafts {
    private final EntityManager entities;
    private final InvoicingQueries queries;
    private final TaxSettings taxSettings;
    private final Books books;
    private final Edits edits;
    private final Clock clock;

    @Inject
    public Drafts(
            EntityManager entities,
            InvoicingQueries queries,
            TaxSettings taxSettings,
            Books books,
            Edits edits,
            Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.taxSettings = taxSettings;
        this.books = books;
        this.edits = edits;
        this.clock = clock;
    }

    /**
     * The row as it is stored now, kept from others until the commit, also where the id is new; null where there is none,
     * be it because it was issued.
     */
    public @Nullable DraftRow turn(InvoiceId id) {
        return edits.locked(DraftRow.class, id);
    }

    /** Refuses an id that has been used, and an edit of what is not there. */
    public void requireNew(InvoiceId id, int version) {
        if (isDiscarded(id)) {
            throw version == 0
                    ? new KernelRefusal.IdTaken("invoice draft", id, "that was discarded")
                    : new KernelRefusal.NotFound("invoice draft", id);
        }
        if (version != 0 || entities.find(InvoiceRow.class, id.value()) != null) {
            throw missing(id);
        }
    }

    /** Makes a draft of an id whose turn the caller holds; {@code visit} is null for a freely written one. */
    public InvoiceDraft make(
            Draft draft,
            @Nullable Billable visit,
            Map<InvoiceLineId, LineOrigin> origins,
            UserId by,
            Fingerprint fingerprint) {
        Money gross = written(draft, origins).gross();
        DraftRow row = new DraftRow(draft, visit, gross, by, clock.instant(), fingerprint);
        entities.persist(row);
        persistParts(row, draft, origins);
        entities.flush();
        return reckon(row, draft, origins);
    }

    /** As {@link #turn}; refuses an unknown draft, and one that has been issued. */
    public DraftRow locked(InvoiceId id) {
        DraftRow row = turn(id);
        if (row == null) {
            throw missing(id);
        }
        return row;
    }

    /** Whether there was a draft of that id once, which was discarded. */
    public boolean isDiscarded(InvoiceId id) {
        return entities.find(DiscardedDraftRow.class, id.value()) != null;
    }

    public InvoiceDraft load(InvoiceId id) {
        DraftRow row = entities.find(DraftRow.class, id.value());
        if (row == null) {
            throw missing(id);
        }
        return load(row);
    }

    /** The draft; empty for an unknown id and for one that has been issued. */
    public Optional<InvoiceDraft> loadIfThere(InvoiceId id) {
        return Optional.ofNullable(entities.find(DraftRow.class, id.value())).map(this::load);
    }

    /** What to refuse where there is no draft: it is unknown, or has been issued. */
    public Refusal missing(InvoiceId id) {
        InvoiceRow issued = entities.find(InvoiceRow.class, id.value());
        return issued == null
                ? new KernelRefusal.NotFound("invoice draft", id)
                : new InvoiceRefusal.AlreadyIssued(issued.label());
    }

    public InvoiceDraft load(DraftRow row) {
        CurrencyUnit currency = books.currency();
        List<DraftAdjustmentRow> adjustments = queries.draftAdjustments(row.id);
        List<DraftLine> lines = new ArrayList<>();
        Map<InvoiceLineId, LineOrigin> origins = new LinkedHashMap<>();
        for (DraftLineRow line : queries.draftLines(row.id)) {
            lines.add(line.toDraftLine(
                    currency,
                    adjustments.stream()
                            .filter(a -> a.isOfLine(line.key.position()))
                            .map(a -> a.toAdjustment(currency))
                            .toList()));
            LineOrigin origin = line.toOrigin();
            if (origin != null) {
                origins.put(line.id, origin);
            }
        }
        Draft content = new Draft(
                row.id(),
                row.version,
                row.customer(),
                row.serviceDate,
                row.reference,
                row.note,
                lines,
                adjustments.stream()
                        .flatMap(a -> onDocument(a, currency).stream())
                        .toList(),
                books.money(row.prepaid),
                books.money(row.rounding));
        return reckon(row, content, origins);
    }

    private static Optional<Draft.OnDocument> onDocument(DraftAdjustmentRow row, CurrencyUnit currency) {
        return row.taxCode == null
                ? Optional.empty()
                : Optional.of(new Draft.OnDocument(row.toAdjustment(currency), new TaxCode(row.taxCode)));
    }

    /**
     * Writes another content; lines keep their origin as long as they keep their id, and its reason of the price as long
     * as they are not repriced.
     */
    public InvoiceDraft rewrite(DraftRow row, Draft draft, InvoiceDraft stored) {
        Map<InvoiceLineId, LineOrigin> kept = new LinkedHashMap<>(stored.origins());
        kept.keySet().retainAll(draft.lines().stream().map(DraftLine::id).toList());
        Map<InvoiceLineId, DraftLine> before = new HashMap<>();
        stored.content().lines().forEach(line -> before.put(line.id(), line));
        for (DraftLine line : draft.lines()) {
            DraftLine old = before.get(line.id());
            if (old == null || !old.isPricedAs(line)) {
                kept.computeIfPresent(line.id(), (id, origin) -> origin.repriced());
            }
        }
        Money gross = written(draft, kept).gross();
        deleteParts(row);
        row.write(draft, gross);
        persistParts(row, draft, kept);
        entities.flush();
        return reckon(row, draft, kept);
    }

    /** Deletes it, and keeps its id from being used again. */
    public void discard(DraftRow row, UserId by) {
        delete(row);
        entities.persist(new DiscardedDraftRow(row.id(), by, clock.instant()));
    }

    public void delete(DraftRow row) {
        deleteParts(row);
        entities.remove(row);
        entities.flush();
    }

    /** What a draft comes to that is being written; refuses what the books cannot hold ({@link InvoiceTotals#held}). */
    public InvoiceTotals written(Draft content, Map<InvoiceLineId, LineOrigin> origins) {
        return reckoning(content, origins).totals().held();
    }

    public DraftReckoning reckoning(Draft content, Map<InvoiceLineId, LineOrigin> origins) {
        // Each code is asked for once: lines share few, and each query makes Hibernate look through all that was
        // changed.
        Map<TaxCode, TaxSetting> settings = new HashMap<>();
        return DraftReckoning.of(
                books.currency(),
                content,
                origins,
                code -> settings.computeIfAbsent(code, one -> taxSettings.on(one, content.serviceDate())));
    }

    private InvoiceDraft reckon(DraftRow row, Draft content, Map<InvoiceLineId, LineOrigin> origins) {
        return new InvoiceDraft(
                Records.with(content, "version", row.version),
                row.visit(),
                origins,
                reckoning(content, origins).totals());
    }

    private void deleteParts(DraftRow row) {
        queries.draftAdjustments(row.id).forEach(entities::remove);
        queries.draftLines(row.id).forEach(entities::remove);
        entities.flush();
    }

    private void persistParts(DraftRow row, Draft content, Map<InvoiceLineId, LineOrigin> origins) {
        int adjustment = 0;
        for (int i = 0; i < content.lines().size(); i++) {
            DraftLine line = content.lines().get(i);
            entities.persist(new DraftLineRow(new PartKey(row.id, i + 1), line, origins.get(line.id())));
            for (Adjustment ofLine : line.adjustments()) {
                entities.persist(new DraftAdjustmentRow(new PartKey(row.id, ++adjustment), ofLine, i + 1, null));
            }
        }
        for (Draft.OnDocument onDocument : content.adjustments()) {
            entities.persist(new DraftAdjustmentRow(
                    new PartKey(row.id, ++adjustment),
                    onDocument.adjustment(),
                    null,
                    onDocument.taxCode().value()));
        }
    }
}
