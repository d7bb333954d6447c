package eaveside.ledger;

import java.util.Comparator;
import java.util.UUID;

/**
 * Something that a posting must have to itself until it commits. Whoever posts names what is to be locked; {@link Posting}
 * takes it in one order for the whole program, so that two postings can wait for each other but never both at once.
 *
 * @param id   of what is locked
 * @param take takes the lock, waiting for whoever has it
 */
public record Lock(Rank rank, UUID id, Runnable take) {
    /** In the order in which they are taken; the month of the books comes after the records, before everything else. */
    public enum Rank {
        /** What a document is about: a visit, a draft. */
        RECORD,
        /** What a customer owes and has to the good. */
        CUSTOMER,
        /** A store room or van with its stock. */
        LOCATION
    }

    static final Comparator<Lock> ORDER = Comparator.comparing(Lock::rank).thenComparing(Lock::id);
}
