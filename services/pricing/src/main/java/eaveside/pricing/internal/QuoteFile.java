package eaveside.pricing.internal;

import eaveside.access.RecordAudit;
import eaveside.kernel.FindingId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.pricing.Quote;
import eaveside.pricing.QuoteChange;
import eaveside.pricing.QuoteRevision;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.time.Clock;
import java.util.List;
import java.util.UUID;
import java.util.function.Consumer;
import org.jspecify.annotations.Nullable;

/** Loads and stores quotes with their lines. */
@Shared
public class QuoteFile {
    private final EntityManager entities;
    private final PricingQueries queries;
    private final Books books;
    private final RecordAudit audit;
    private final Clock clock;

    @Inject
    public QuoteFile(EntityManager entities, PricingQueries queries, Books books, RecordAudit audit, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
        this.audit = audit;
        this.clock = clock;
    }

    /** Its row, locked until the commit, so that of two changes the second sees the first. */
    public @Nullable QuoteRow find(QuoteId id) {
        return entities.find(QuoteRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE);
    }

    /** Like {@link #find}; refuses an unknown id. */
    public QuoteRow lock(QuoteId id) {
        QuoteRow row = find(id);
        if (row == null) {
            throw new KernelRefusal.NotFound("quote", id);
        }
        return row;
    }

    /**
     * Changes a quote: rivals take turns, the same change again is a retry, and whoever is second is refused with what is
     * stored now. The deed is on the audit log in the same transaction.
     *
     * @param  action of the audit log
     */
    public Quote change(String action, QuoteChange change, Consumer<QuoteRow> apply) {
        Fingerprint fingerprint = Fingerprint.of((Record) change);
        QuoteRow row = lock(change.id());
        if (row.lastSaw(fingerprint)) {
            return read(row);
        }
        row.requireOpen();
        if (row.version() != change.version()) {
            Quote stored = read(row);
            throw new KernelRefusal.Stale(
                    "quote", change, new QuoteRevision(stored.id(), stored.version(), stored.scope(), row.savedBy()));
        }
        row.changed(change.by(), clock.instant(), fingerprint);
        apply.accept(row);
        audit.done(action, change.by(), change.id());
        return read(row);
    }

    /** Refuses a finding that does not exist. Findings are kept by a module that knows this one, so the table is asked. */
    public void requireFinding(FindingId finding) {
        boolean exists = !entities.createNativeQuery("select id from finding where id = :id", UUID.class)
                .setParameter("id", finding.value())
                .getResultList()
                .isEmpty();
        if (!exists) {
            throw new KernelRefusal.Unfit("cameFrom", "{field} must be a finding that exists");
        }
    }

    public void add(QuoteRow row, QuoteId id, List<Quote.Line> lines) {
        entities.persist(row);
        entities.flush();
        addLines(id, lines);
    }

    /** Writes the row's changes and puts these lines in place of the old ones, which must not have been read here. */
    public void replaceLines(QuoteId id, List<Quote.Line> lines) {
        entities.flush();
        queries.deleteLines(id);
        addLines(id, lines);
    }

    private void addLines(QuoteId id, List<Quote.Line> lines) {
        List<UUID> taken =
                queries.linesOfOthers(lines.stream().map(l -> l.id().value()).toList(), id);
        if (!taken.isEmpty()) {
            throw new KernelRefusal.IdTaken("quote line", taken.getFirst(), "of another quote");
        }
        int position = 0;
        for (Quote.Line line : lines) {
            entities.persist(new QuoteLineRow(id, position++, line));
        }
        entities.flush();
    }

    public Quote read(QuoteRow row) {
        entities.flush();
        return row.toQuote(books.currency(), queries.linesOf(new QuoteId(row.id)));
    }
}
