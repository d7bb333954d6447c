package eaveside.margins;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What the margin report refuses. */
public abstract sealed class MarginRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private MarginRefusal(Kind kind, String message, String... fields) {
        super(kind, message, fields);
    }

    public static final class BadPeriod extends MarginRefusal {
        private static final long serialVersionUID = 1;

        public BadPeriod(LocalDate from, LocalDate to) {
            super(Kind.RULE, "The period would end on " + to + ", before it begins on " + from, "from", "to");
        }
    }
}
