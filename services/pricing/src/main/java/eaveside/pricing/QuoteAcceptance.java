package eaveside.pricing;

import eaveside.kernel.Default;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;

/**
 * Which quote, at the version that the customer saw.
 *
 * @param  acceptedBy who accepted and how, such as "Ms. Reed, by phone"; may be empty
 */
public record QuoteAcceptance(
        QuoteId id, int version, @Default String acceptedBy, UserId by) implements QuoteChange {
    public QuoteAcceptance {
        acceptedBy = Texts.optional("acceptedBy", acceptedBy, 500);
    }
}
