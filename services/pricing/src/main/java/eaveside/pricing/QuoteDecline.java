package eaveside.pricing;

import eaveside.kernel.QuoteId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;

/** Which quote, and why. */
public record QuoteDecline(QuoteId id, int version, String reason, UserId by) implements QuoteChange {
    public QuoteDecline {
        reason = Texts.required("reason", reason, 500);
    }
}
