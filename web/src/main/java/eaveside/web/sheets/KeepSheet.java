package eaveside.web.sheets;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.VisitId;
import eaveside.visits.RecordSentSheet;
import eaveside.visits.SentSheet;
import eaveside.visits.SheetToRecord;
import eaveside.web.security.Viewer;
import jakarta.inject.Inject;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Keeps a sheet that was refused, as it was sent, for the office to read. */
@Shared
public class KeepSheet {
    private static final Pattern SEVERITY = Pattern.compile("finding-\\d{1,6}-severity");
    private static final String URGENT = "URGENT";

    @Inject
    RecordSentSheet recordSentSheet;

    @Inject
    Viewer viewer;

    /** The same sheet again is kept once, whatever it is refused for; tells whether it had been kept before. */
    boolean keep(VisitId visit, List<SentSheet.Field> fields, String refusal) {
        boolean urgent = fields.stream()
                .anyMatch(field -> SEVERITY.matcher(field.name()).matches()
                        && field.value().equals(URGENT));
        return recordSentSheet
                .record(new SheetToRecord(visit, sheet(fields), viewer.id(), fields, refusal, urgent))
                .again();
    }

    private static @Nullable DocumentId sheet(List<SentSheet.Field> fields) {
        try {
            return fields.stream()
                    .filter(field -> field.name().equals("id"))
                    .findFirst()
                    .map(field -> DocumentId.of(field.value()))
                    .orElse(null);
        } catch (KernelRefusal.NotAnId e) {
            return null;
        }
    }
}
