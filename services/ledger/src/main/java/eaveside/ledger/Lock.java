package eaveside.ledger;

import java.util.Comparator;

/**
 * What a posting decides on, kept from others until the commit. Every posting takes its locks in the order of their ranks,
 * the month between {@link Rank#RECORD} and {@link Rank#CUSTOMER} and the series of numbers last, so that no two of them
 * wait for one another.
 */
public final class Lock {
    /** The order of all locks; see {@link Posting}. */
    public enum Rank {
        /** What the document is about: a visit, a draft, a month that is being closed. */
        RECORD,
        /** A customer's account and its invoices. */
        CUSTOMER,
        /** Locations of stock, with the lots there. */
        LOCATION
    }

    static final Comparator<Lock> ORDER = Comparator.comparing(lock -> lock.rank);

    private final Rank rank;
    private final Runnable take;

    private Lock(Rank rank, Runnable take) {
        this.rank = rank;
        this.take = take;
    }

    /** @param take may refuse, and may read what the locks of lower rank keep */
    public static Lock of(Rank rank, Runnable take) {
        return new Lock(rank, take);
    }

    boolean isTakenBeforeTheMonth() {
        return rank == Rank.RECORD;
    }

    void take() {
        take.run();
    }
}
