package eaveside.pricing;

import eaveside.kernel.Shared;
import eaveside.pricing.internal.QuoteFile;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/** Records that a quote was declined; it keeps its number and never changes again. */
@Shared
public class DeclineQuote {
    private final QuoteFile file;

    @Inject
    public DeclineQuote(QuoteFile file) {
        this.file = file;
    }

    /**
     * The same command again is a retry. Refuses an accepted or declined quote, and a version that another user has
     * changed; an expired quote can be declined.
     */
    @Transactional
    public Quote decline(QuoteDecline decline) {
        return file.change("quote.decline", decline, row -> row.close(QuoteStatus.DECLINED, decline.reason()));
    }
}
