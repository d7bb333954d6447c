package eaveside.pricing;

import eaveside.access.Edits;
import eaveside.access.RecordAudit;
import eaveside.kernel.Elements;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.pricing.internal.PriceBookRow;
import eaveside.pricing.internal.PriceBookRules;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Begins the draft of a price book, or changes one. */
@Shared
public class SavePriceBook {
    private final EntityManager entities;
    private final Edits edits;
    private final PriceBookRules rules;
    private final RecordAudit audit;
    private final Books books;
    private final Clock clock;

    @Inject
    public SavePriceBook(
            EntityManager entities, Edits edits, PriceBookRules rules, RecordAudit audit, Books books, Clock clock) {
        this.entities = entities;
        this.edits = edits;
        this.rules = rules;
        this.audit = audit;
        this.books = books;
        this.clock = clock;
    }

    /**
     * The draft with its new version; the same content again is a retry. Refuses a published book, a version that another
     * user has changed, services and service lines that do not exist, a price in a unit that is not the service's type, a
     * surcharge for an attribute that its surfaces do not have, another currency than the books', and a first day far away
     * ({@link Books#near}).
     */
    @Transactional
    public PriceBookDraft save(PriceBookDraft draft, UserId by) {
        PriceBookRow row = edits.locked(PriceBookRow.class, draft.id());
        if (row != null && row.isPublished()) {
            throw new PricingRefusal.AlreadyPublished(row.name());
        }
        PriceBookDraft stored = row == null ? null : row.toDraft(books.currency());
        if (stored != null && stored.saysTheSameAs(draft)) {
            return stored;
        }
        Elements.inside("list", draft.list(), () -> {
            books.near(draft.list().from(), "from");
            rules.check(draft.list());
        });
        if (stored != null && stored.version() != draft.version()) {
            throw new KernelRefusal.Stale(draft.what(), draft, stored);
        }
        Fingerprint fingerprint = Fingerprint.of(draft);
        if (row != null) {
            row.write(draft.list(), by, clock.instant(), fingerprint);
        } else if (draft.version() == 0) {
            row = new PriceBookRow(draft.id(), draft.list(), by, clock.instant(), fingerprint);
            entities.persist(row);
        } else {
            throw new KernelRefusal.NotFound(draft.what(), draft.id());
        }
        audit.done("price-book.save", by, draft.id());
        entities.flush();
        return row.toDraft(books.currency());
    }
}
