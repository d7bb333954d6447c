package eaveside.pricing;

import eaveside.kernel.Fingerprint;
import eaveside.kernel.QuoteId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.pricing.internal.QuoteFile;
import eaveside.pricing.internal.QuoteRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;

/** Records that nothing comes of a quote; it keeps its number and never changes again. */
@Dependent
public class DeclineQuote {
    private final QuoteFile file;
    private final Clock clock;

    @Inject
    public DeclineQuote(QuoteFile file, Clock clock) {
        this.file = file;
        this.clock = clock;
    }

    /** Which quote, and why. */
    public record Decline(QuoteId id, int version, String reason, UserId by) {
        public Decline {
            reason = Texts.required("reason", reason, 500);
        }
    }

    /**
     * The same command again is a retry. Refuses an agreed or declined quote, and a version that somebody else has
     * changed; an expired quote can be declined.
     */
    @Transactional
    public Quote decline(Decline decline) {
        Fingerprint fingerprint = Fingerprint.of(decline);
        QuoteRow row = file.lock(decline.id());
        if (!row.lastSaw(fingerprint)) {
            file.requireChangeable(row, decline.version(), decline);
            row.close(QuoteStatus.DECLINED, decline.reason(), decline.by(), clock.instant(), fingerprint);
        }
        return file.read(row);
    }
}
