package eaveside.pricing;

import eaveside.kernel.QuoteId;
import eaveside.kernel.UserId;

/** Which quote, at the version that was sent. */
public record QuoteSending(QuoteId id, int version, UserId by) implements QuoteChange {}
