package eaveside.visits;

import eaveside.access.RecordAudit;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.SentSheetId;
import eaveside.kernel.Shared;
import eaveside.visits.internal.SentSheetRow;
import eaveside.visits.internal.SentSheets;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Optional;

/**
 * Keeps what somebody sent as the sheet of a visit where it did not become that, as it was sent, so that no work, finding
 * or photo is lost between two phones of a crew or between a phone and a refusal.
 */
@Shared
public class RecordSentSheet {
    private final Visits visits;
    private final SentSheets sentSheets;
    private final RecordAudit audit;

    @Inject
    public RecordSentSheet(Visits visits, SentSheets sentSheets, RecordAudit audit) {
        this.visits = visits;
        this.sentSheets = sentSheets;
        this.audit = audit;
    }

    /**
     * That it is recorded.
     *
     * @param  again whether it had been before
     */
    public record Recorded(SentSheetId id, boolean again) {}

    /**
     * The same again is one row. Takes it from anybody on the staff, in the visit's crew or not: who was taken off the crew
     * after the work was done has done it all the same. Refuses a visit that does not exist.
     */
    @Transactional
    public Recorded record(SheetToRecord sent) {
        visits.required(sent.visit());
        Fingerprint fingerprint = sent.fingerprint();
        Optional<SentSheetRow> before = sentSheets.find(sent.visit(), sent.by(), fingerprint);
        if (before.isPresent()) {
            return new Recorded(before.get().id(), true);
        }
        audit.done("visit.sheet-recorded", sent.by(), sent.visit());
        return new Recorded(sentSheets.add(sent, fingerprint).id(), false);
    }
}
