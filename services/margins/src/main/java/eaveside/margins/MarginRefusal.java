package eaveside.margins;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What the margin report refuses. */
public abstract sealed class MarginRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private MarginRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class BadPeriod extends MarginRefusal {
        private static final long serialVersionUID = 1;

        public BadPeriod(LocalDate from, LocalDate to) {
            super(Type.RULE, "The period would end on " + to + ", before it begins on " + from, "from", "to");
        }
    }
}
