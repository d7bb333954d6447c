package eaveside.visits;

import eaveside.kernel.SentSheetId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What somebody sent as the sheet of a visit and what did not become it: refused, or sent after another of the crew had
 * signed off. Whatever a technician has sent can be read for ever.
 *
 * @param  refusal why it did not become the visit's sheet
 * @param  urgent  whether it tells of something urgent
 * @param  settled whether nobody has to read it any more: its sender has sent it again since, or it became the sheet after all
 * @param  read    by whom in the office, and what came of it; absent while nobody has
 * @param  fields  of the form, in the order that they were sent in
 */
public record SentSheet(
        SentSheetId id,
        VisitId visit,
        UserId by,
        Instant at,
        String refusal,
        boolean urgent,
        boolean settled,
        @Nullable Reading read,
        List<Field> fields) {
    public SentSheet {
        fields = List.copyOf(fields);
    }

    /** Whether it waits for somebody in the office to read it: its sender has not sent it corrected either. */
    public boolean isUnread() {
        return read == null && !settled;
    }

    /** One field of the form; a name may come several times. */
    public record Field(String name, String value) {
        /** Some characters cannot be stored; nothing else of what was sent is refused or cut. */
        public Field {
            name = storable(name);
            value = storable(value);
        }

        private static String storable(String text) {
            return text.replace('\u0000', '\ufffd');
        }
    }

    /** That the office has read it. */
    public record Reading(UserId by, Instant at, String note) {}
}
