package eaveside.pricing;

import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;

/**
 * A change of a stored quote. It names the version that it started from, so that nobody sends, accepts or overwrites prices
 * that they have not seen.
 */
public sealed interface QuoteChange extends Versioned
        permits QuoteAcceptance, QuoteDecline, QuoteRevision, QuoteSending {
    QuoteId id();

    UserId by();

    @Override
    default String what() {
        return "quote";
    }
}
