package eaveside.visits;

import eaveside.access.RecordAudit;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.SentSheetId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.internal.SentSheetRow;
import eaveside.visits.internal.SentSheets;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what somebody sent as the sheet of a visit where it did not become that, as it was sent, so that no work, finding
 * or photo is lost between two phones of a crew or between a phone and a refusal.
 */
@Dependent
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
     * What was sent.
     *
     * @param  sheet   the id that the phone had made for the sheet; absent where it was none
     * @param  refusal why it did not become the visit's sheet
     * @param  urgent  whether it tells of something urgent
     */
    public record Sent(
            VisitId visit,
            @Nullable DocumentId sheet,
            UserId by,
            List<SentSheet.Field> fields,
            String refusal,
            boolean urgent) {
        public Sent {
            refusal = Texts.required("refusal", refusal, 10_000);
            fields = List.copyOf(fields);
            if (fields.isEmpty()) {
                throw new VisitRefusal.NothingSent();
            }
        }

        /** The same content of the same sender is the same sheet, whatever it is refused for. */
        private record Content(VisitId visit, UserId by, List<SentSheet.Field> fields) {}

        Fingerprint fingerprint() {
            return Fingerprint.of(new Content(visit, by, fields));
        }
    }

    /**
     * The same again is one row. Takes it from anybody on the staff, in the visit's crew or not: who was taken off the crew
     * after the work was done has done it all the same. Refuses a visit that does not exist.
     */
    @Transactional
    public SentSheetId record(Sent sent) {
        visits.required(sent.visit());
        Fingerprint fingerprint = sent.fingerprint();
        Optional<SentSheetRow> before = sentSheets.find(sent.visit(), sent.by(), fingerprint);
        if (before.isPresent()) {
            audit.again();
            return before.get().id();
        }
        audit.done("visit.sheet-recorded", sent.by(), sent.visit());
        return sentSheets.add(sent, fingerprint).id();
    }
}
