package eaveside.web.books;

import eaveside.web.forms.Fields;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** The days that a trial balance is about: from the first of the month until today where nothing is asked for. */
record Span(LocalDate from, LocalDate to) {
    static Span of(@Nullable LocalDate from, @Nullable LocalDate to, LocalDate today) {
        LocalDate last = to == null ? today : to;
        return new Span(from == null ? last.withDayOfMonth(1) : from, last);
    }

    /** As typed; errors are noted at the fields {@code from} and {@code to}, and the days shown are then some that can be. */
    static Span of(Fields fields, LocalDate today) {
        LocalDate to = fields.typed("to").isEmpty() ? today : fields.date("to", today);
        Span span = of(fields.typed("from").isEmpty() ? null : fields.date("from", to.withDayOfMonth(1)), to, today);
        if (to.isBefore(span.from())) {
            fields.wrong("to", "books.span-backwards");
            return new Span(to, to);
        }
        return span;
    }

    String query() {
        return "?from=" + from + "&to=" + to;
    }
}
