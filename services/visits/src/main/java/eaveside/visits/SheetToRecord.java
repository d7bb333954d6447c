package eaveside.visits;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What was sent.
 *
 * @param  sheet   the id that the phone had made for the sheet; absent where it was none
 * @param  refusal why it did not become the visit's sheet
 * @param  urgent  whether it tells of something urgent
 */
public record SheetToRecord(
        VisitId visit,
        @Nullable DocumentId sheet,
        UserId by,
        List<SentSheet.Field> fields,
        String refusal,
        boolean urgent) {
    private static final int MOST = 10_000;

    public SheetToRecord {
        // However much is wrong with it, the sheet is kept.
        refusal = Texts.required("refusal", refusal.substring(0, Math.min(refusal.length(), MOST)), MOST);
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
