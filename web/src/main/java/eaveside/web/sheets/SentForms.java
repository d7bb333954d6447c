package eaveside.web.sheets;

import eaveside.kernel.DocumentId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.visits.RecordSentSheet;
import eaveside.visits.SentSheet;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.ws.rs.core.MultivaluedMap;
import java.util.List;
import java.util.TreeMap;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Keeps a sheet's form that did not become its visit's sheet, so that the office can read it. */
@Dependent
class SentForms {
    private static final Pattern SEVERITY = Pattern.compile("finding-\\d{1,4}-severity");
    private static final String URGENT = "URGENT";

    private final RecordSentSheet recordSentSheet;

    @Inject
    SentForms(RecordSentSheet recordSentSheet) {
        this.recordSentSheet = recordSentSheet;
    }

    /** The same form again is kept once, whatever it is refused for. */
    void keep(VisitId visit, UserId by, MultivaluedMap<String, String> form, String refusal) {
        // By name, since the order in which a form is read is nobody's promise.
        List<SentSheet.Field> fields = new TreeMap<>(form)
                .entrySet().stream()
                        .flatMap(field ->
                                field.getValue().stream().map(value -> new SentSheet.Field(field.getKey(), value)))
                        .toList();
        boolean urgent = fields.stream()
                .anyMatch(field -> SEVERITY.matcher(field.name()).matches()
                        && field.value().equals(URGENT));
        recordSentSheet.record(
                new RecordSentSheet.Sent(visit, sheet(form.getFirst("id")), by, fields, refusal, urgent));
    }

    private static @Nullable DocumentId sheet(@Nullable String id) {
        try {
            return id == null ? null : DocumentId.of(id);
        } catch (KernelRefusal.NotAnId e) {
            return null;
        }
    }
}
