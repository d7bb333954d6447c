package eaveside.pricing.internal;

import eaveside.kernel.QuoteId;
import eaveside.ledger.Books;
import eaveside.pricing.PricingRefusal;
import eaveside.pricing.Quote;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import java.util.List;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** Loads and stores quotes with their lines. */
@Dependent
public class QuoteFile {
    private final EntityManager entities;
    private final PricingQueries queries;
    private final Books books;

    @Inject
    public QuoteFile(EntityManager entities, PricingQueries queries, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.books = books;
    }

    /** Its row, locked until the commit, so that of two changes the second sees the first. */
    public @Nullable QuoteRow find(QuoteId id) {
        return entities.find(QuoteRow.class, id.value(), LockModeType.PESSIMISTIC_WRITE);
    }

    /** Like {@link #find}; refuses an unknown id. */
    public QuoteRow lock(QuoteId id) {
        QuoteRow row = find(id);
        if (row == null) {
            throw new PricingRefusal.NoSuchQuote(id.toString());
        }
        return row;
    }

    /** Refuses a change that started from a version that is no longer the stored one, and any on a closed quote. */
    public void requireChangeable(QuoteRow row, int version, Record command) {
        row.requireOpen();
        if (row.version() != version) {
            throw new PricingRefusal.ChangedMeanwhile(row.label(), command, read(row));
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
        queries.deleteLines(id.value());
        addLines(id, lines);
    }

    private void addLines(QuoteId id, List<Quote.Line> lines) {
        List<UUID> taken =
                queries.linesOfOthers(lines.stream().map(l -> l.id().value()).toList(), id.value());
        if (!taken.isEmpty()) {
            throw new PricingRefusal.IdTaken(taken.getFirst().toString(), "a line of another quote");
        }
        int position = 0;
        for (Quote.Line line : lines) {
            entities.persist(new QuoteLineRow(id, position++, line));
        }
        entities.flush();
    }

    public Quote read(QuoteRow row) {
        entities.flush();
        return row.toQuote(books.currency(), queries.linesOf(row.rawId()));
    }
}
