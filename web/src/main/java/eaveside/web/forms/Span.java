package eaveside.web.forms;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** The days that a report is about: where none are named, from the first of the month until a last day of the report's own. */
public record Span(LocalDate from, LocalDate to) {
    public static Span of(@Nullable LocalDate from, @Nullable LocalDate to, LocalDate last) {
        LocalDate until = to == null ? last : to;
        return new Span(from == null ? until.withDayOfMonth(1) : from, until);
    }

    /** As typed; errors are noted at the fields {@code from} and {@code to}, and the days are then some that can be. */
    public static Span of(Fields fields, LocalDate last) {
        LocalDate to = fields.typed("to").isEmpty() ? last : fields.date("to", last);
        Span span = of(fields.typed("from").isEmpty() ? null : fields.date("from", to), to, last);
        if (to.isBefore(span.from())) {
            fields.wrong("to", "forms.span-backwards");
            return new Span(to, to);
        }
        return span;
    }

    /** A day as it stands in the filter: what was typed where that could not be read. */
    public String day(Fields fields, String name) {
        return fields.hasErrors() ? fields.typed(name) : (name.equals("from") ? from : to).toString();
    }

    /** For links to the same report in another shape. */
    public String query() {
        return "?from=" + from + "&to=" + to;
    }
}
