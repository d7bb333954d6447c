package eaveside.costing;

import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import java.time.LocalDate;

/** What this module refuses. */
public abstract sealed class CostingRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private CostingRefusal(Kind kind, String message, String... fields) {
        super(kind, message, fields);
    }

    public static final class Negative extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public Negative(String field) {
            super(Kind.RULE, "The " + field + " cannot lie below zero", field);
        }
    }

    public static final class TooManyMinutes extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public TooManyMinutes(String field, int most) {
            super(Kind.RULE, "The " + field + " cannot be more than " + most, field);
        }
    }

    public static final class NotADistance extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public NotADistance(String field, Unit unit) {
            super(Kind.RULE, "The " + field + " is counted in miles or kilometres, not in " + unit.code(), field);
        }
    }

    public static final class MixedCurrencies extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public MixedCurrencies() {
            super(Kind.RULE, "The three rates must be in one currency, the company's", "labourPerHour");
        }
    }

    /** The day is before the first rates. */
    public static final class NoRatesOn extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public NoRatesOn(LocalDate date) {
            super(Kind.RULE, "No cost rates are in force on " + date + ": the owner sets them first", "date");
        }
    }

    /** What has been in force stays as it was. */
    public static final class InThePast extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public InThePast(LocalDate from, LocalDate earliest) {
            super(
                    Kind.RULE,
                    "New rates cannot begin on " + from + ", since visits from then on may have been costed; the"
                            + " earliest possible is " + earliest,
                    "from");
        }
    }

    /** A cost needs at least one service line to carry it. */
    public static final class NoLines extends CostingRefusal {
        private static final long serialVersionUID = 1;

        public NoLines() {
            super(Kind.RULE, "The visit names no service line that could carry its cost", "lines");
        }
    }
}
