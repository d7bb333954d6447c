package eaveside.pricing;

/** What has become of a quote. Draft and sent quotes can be revised; accepted and declined ones never change. */
public enum QuoteStatus {
    /** Being written, or revised since it was sent. */
    DRAFT,
    /** Sent to the customer. */
    SENT,
    /** The customer accepted; visits can be scheduled from it. */
    ACCEPTED,
    /** The customer declined, or the company withdrew it. */
    DECLINED;

    public boolean isOpen() {
        return this == DRAFT || this == SENT;
    }
}
