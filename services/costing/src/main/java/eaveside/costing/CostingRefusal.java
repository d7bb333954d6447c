package eaveside.costing;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What this module refuses. */
public abstract sealed class CostingRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private CostingRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class MixedCurrencies extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public MixedCurrencies(String field) {
            super(Type.RULE, "{field} and the other rates must be in the company's currency", field);
        }
    }

    /** The day is before the first rates. */
    public static final class NoRatesOn extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public NoRatesOn(LocalDate date) {
            super(Type.RULE, "No cost rates are in force on " + date + ". The owner sets them first", "date");
        }
    }

    /** A cost needs at least one service line to carry it. */
    public static final class NoLines extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public NoLines() {
            super(Type.RULE, "The visit names no service line that could carry its cost", "lines");
        }
    }
}
