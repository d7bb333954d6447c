package eaveside.pricing;

import eaveside.kernel.Fingerprint;
import eaveside.kernel.PriceBookId;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.pricing.internal.Numbers;
import eaveside.pricing.internal.PriceBookRow;
import eaveside.pricing.internal.PriceBookRules;
import eaveside.pricing.internal.PricingSeries;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Begins the draft of a price book, or changes one. */
@Dependent
public class SavePriceBook {
    private final EntityManager entities;
    private final PriceBookRules rules;
    private final Numbers numbers;
    private final Books books;
    private final Clock clock;

    @Inject
    public SavePriceBook(EntityManager entities, PriceBookRules rules, Numbers numbers, Books books, Clock clock) {
        this.entities = entities;
        this.rules = rules;
        this.numbers = numbers;
        this.books = books;
        this.clock = clock;
    }

    /**
     * A draft as edited.
     *
     * @param  version the one that the edit started from; 0 for a new draft
     */
    public record Save(PriceBookId id, int version, PriceList list, UserId by) {}

    /**
     * The draft with its new version; the same command again is a retry. Refuses a published book, a version that
     * somebody else has changed, services and service lines that do not exist, a price in a unit that is not the
     * service's type, a surcharge for an attribute that its surfaces do not have, and another currency than the books'.
     */
    @Transactional
    public PriceBookDraft save(Save save) {
        Fingerprint fingerprint = Fingerprint.of(save);
        // Retries of a new draft queue here, so that the second finds what the first has made.
        numbers.lock(PricingSeries.PRICE_BOOK);
        PriceBookRow row = entities.find(PriceBookRow.class, save.id().value(), LockModeType.PESSIMISTIC_WRITE);
        if (row != null && row.lastSaw(fingerprint)) {
            return row.toDraft(books.currency());
        }
        if (row != null && row.isPublished()) {
            throw new PricingRefusal.AlreadyPublished(row.name());
        }
        rules.check(save.list());
        if (row == null) {
            if (save.version() != 0) {
                throw new PricingRefusal.NoSuchBook(save.id().toString());
            }
            row = new PriceBookRow(save.id(), save.list(), save.by(), clock.instant(), fingerprint);
            entities.persist(row);
        } else {
            if (row.version() != save.version()) {
                throw new PricingRefusal.ChangedMeanwhile(
                        "The price book '" + row.name() + "'", save, row.toDraft(books.currency()));
            }
            row.write(save.list(), save.by(), clock.instant(), fingerprint);
        }
        entities.flush();
        return row.toDraft(books.currency());
    }
}
