package eaveside.pricing;

/** Where a quote stands. Draft and offered quotes can be revised; agreed and declined ones never change. */
public enum QuoteStatus {
    /** Being written, or revised since it was offered. */
    DRAFT,
    /** Given to the customer. */
    SENT,
    /** The customer agreed; visits can be booked from it. */
    ACCEPTED,
    /** The customer declined, or the company withdrew it. */
    DECLINED;

    public boolean isOpen() {
        return this == DRAFT || this == SENT;
    }
}
