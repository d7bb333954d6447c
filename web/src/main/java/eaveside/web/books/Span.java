package eaveside.web.books;

import eaveside.web.forms.Fields;
import java.time.LocalDate;

/**
 * The days that a trial balance is about: from the first of the month until today where nothing is asked for. Errors are
 * noted at the fields {@code from} and {@code to}.
 */
record Span(LocalDate from, LocalDate to) {
    static Span of(Fields fields, LocalDate today) {
        LocalDate to = fields.typed("to").isEmpty() ? today : fields.date("to", today);
        LocalDate from =
                fields.typed("from").isEmpty() ? to.withDayOfMonth(1) : fields.date("from", to.withDayOfMonth(1));
        if (to.isBefore(from)) {
            fields.wrong("to", "books.span-backwards");
            return new Span(to, to);
        }
        return new Span(from, to);
    }

    String query() {
        return "?from=" + from + "&to=" + to;
    }
}
