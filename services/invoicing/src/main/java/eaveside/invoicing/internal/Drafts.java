package eaveside.invoicing.internal;

import eaveside.catalog.TaxCode;
import eaveside.catalog.TaxSettings;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.DraftContent;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceRefusal;
import eaveside.invoicing.LineOrigin;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Money;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.visits.BillableVisit.Billable;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Keeps drafts: a row with its lines, allowances and charges, rewritten as a whole by an edit. */
@Dependent
public class Drafts {
    private final EntityManager entities;
    private final InvoicingQueries queries;
    private final TaxSettings taxSettings;
    private final Books books;
    private final Clock clock;

    @Inject
    public Drafts(EntityManager entities, InvoicingQueries queries, TaxSettings taxSettings, Books books, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.taxSettings = taxSettings;
        this.books = books;
        this.clock = clock;
    }

    /** The draft of that id if it was made before; refuses with a conflict where its content was another. */
    public Optional<InvoiceDraft> alreadyMade(InvoiceId id, Fingerprint fingerprint) {
        DraftRow row = entities.find(DraftRow.class, id.value());
        if (row == null) {
            InvoiceRow issued = entities.find(InvoiceRow.class, id.value());
            if (issued != null) {
                throw new InvoiceRefusal.AlreadyIssued(issued.label());
            }
            return Optional.empty();
        }
        if (!row.hasFingerprint(fingerprint)) {
            throw new InvoiceRefusal.IdTaken(id.toString());
        }
        return Optional.of(load(row));
    }

    public InvoiceDraft make(
            InvoiceId id,
            CustomerId customer,
            @Nullable Billable visit,
            DraftContent content,
            Map<InvoiceLineId, LineOrigin> origins,
            UserId by,
            Fingerprint fingerprint) {
        Money gross = reckoning(content, origins).totals().gross();
        DraftRow row = new DraftRow(id, customer, visit, content, gross, by, clock.instant(), fingerprint);
        entities.persist(row);
        persistParts(row, content, origins);
        entities.flush();
        return reckon(row, content, origins);
    }

    /** The row, locked until the transaction ends; empty where there is none, be it because it was issued meanwhile. */
    public Optional<DraftRow> lockedIfThere(InvoiceId id) {
        return Optional.ofNullable(entities.find(DraftRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE));
    }

    /** The row, locked until the transaction ends; refuses an unknown draft, and one that has been issued. */
    public DraftRow locked(InvoiceId id) {
        return lockedIfThere(id).orElseThrow(() -> missing(id));
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

    private InvoiceRefusal missing(InvoiceId id) {
        InvoiceRow issued = entities.find(InvoiceRow.class, id.value());
        return issued == null
                ? new InvoiceRefusal.NoSuchDraft(id.toString())
                : new InvoiceRefusal.AlreadyIssued(issued.label());
    }

    public InvoiceDraft load(DraftRow row) {
        CurrencyUnit currency = books.currency();
        List<DraftAdjustmentRow> adjustments = queries.draftAdjustments(row.id);
        List<DraftLine> lines = new ArrayList<>();
        Map<InvoiceLineId, LineOrigin> origins = new HashMap<>();
        for (DraftLineRow line : queries.draftLines(row.id)) {
            lines.add(line.toDraftLine(
                    currency,
                    adjustments.stream()
                            .filter(a -> a.isOfLine(line.key.position()))
                            .map(a -> a.toAdjustment(currency))
                            .toList()));
            LineOrigin origin = line.toOrigin();
            if (origin != null) {
                origins.put(new InvoiceLineId(line.id), origin);
            }
        }
        DraftContent content = new DraftContent(
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

    private static Optional<DraftContent.OnDocument> onDocument(DraftAdjustmentRow row, CurrencyUnit currency) {
        return row.taxCode == null
                ? Optional.empty()
                : Optional.of(new DraftContent.OnDocument(row.toAdjustment(currency), new TaxCode(row.taxCode)));
    }

    /**
     * Writes another content; lines keep their origin as long as they keep their id, and its reason
     * of the price as long as nobody reprices them.
     */
    public InvoiceDraft rewrite(DraftRow row, DraftContent content, Map<InvoiceLineId, LineOrigin> origins) {
        Map<InvoiceLineId, LineOrigin> kept = new HashMap<>(origins);
        kept.keySet().retainAll(content.lines().stream().map(DraftLine::id).toList());
        Map<InvoiceLineId, DraftLine> before = new HashMap<>();
        load(row).content().lines().forEach(line -> before.put(line.id(), line));
        for (DraftLine line : content.lines()) {
            DraftLine old = before.get(line.id());
            if (old == null || !old.isPricedAs(line)) {
                kept.computeIfPresent(line.id(), (id, origin) -> origin.repriced());
            }
        }
        Money gross = reckoning(content, kept).totals().gross();
        deleteParts(row);
        row.write(content, gross);
        // The version moves even where only lines changed: it is what the next editor must name.
        entities.lock(row, LockModeType.PESSIMISTIC_FORCE_INCREMENT);
        persistParts(row, content, kept);
        entities.flush();
        return reckon(row, content, kept);
    }

    public void delete(DraftRow row) {
        deleteParts(row);
        entities.remove(row);
        entities.flush();
    }

    public DraftReckoning reckoning(DraftContent content, Map<InvoiceLineId, LineOrigin> origins) {
        return DraftReckoning.of(
                books.currency(), content, origins, code -> taxSettings.on(code, content.serviceDate()));
    }

    private InvoiceDraft reckon(DraftRow row, DraftContent content, Map<InvoiceLineId, LineOrigin> origins) {
        return new InvoiceDraft(
                row.id(),
                row.version,
                row.customer(),
                row.visit(),
                content,
                origins,
                reckoning(content, origins).totals());
    }

    private void deleteParts(DraftRow row) {
        queries.draftAdjustments(row.id).forEach(entities::remove);
        queries.draftLines(row.id).forEach(entities::remove);
        entities.flush();
    }

    private void persistParts(DraftRow row, DraftContent content, Map<InvoiceLineId, LineOrigin> origins) {
        int adjustment = 0;
        for (int i = 0; i < content.lines().size(); i++) {
            DraftLine line = content.lines().get(i);
            entities.persist(new DraftLineRow(new PartKey(row.id, i + 1), line, origins.get(line.id())));
            for (Adjustment ofLine : line.adjustments()) {
                entities.persist(new DraftAdjustmentRow(new PartKey(row.id, ++adjustment), ofLine, i + 1, null));
            }
        }
        for (DraftContent.OnDocument onDocument : content.adjustments()) {
            entities.persist(new DraftAdjustmentRow(
                    new PartKey(row.id, ++adjustment),
                    onDocument.adjustment(),
                    null,
                    onDocument.taxCode().value()));
        }
    }
}
