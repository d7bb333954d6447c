package eaveside.kernel;

/** Values that cannot be: what the constructors of the kernel's types refuse. */
public abstract sealed class KernelRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private KernelRefusal(Kind kind, String message, String... fields) {
        super(kind, message, fields);
    }

    /** More decimals than the currency or unit can hold. */
    public static final class TooManyDecimals extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public TooManyDecimals(String value, String of, int decimals) {
            super(Kind.RULE, value + " has more decimals than " + of + " allows (" + decimals + ")");
        }
    }

    /** More digits in front of the decimal point than anything here can have. */
    public static final class TooLarge extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public TooLarge() {
            super(Kind.RULE, "The number is too large");
        }
    }

    public static final class UnlikeCurrencies extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public UnlikeCurrencies(String one, String other) {
            super(Kind.RULE, one + " and " + other + " cannot be added or compared");
        }
    }

    public static final class UnlikeUnits extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public UnlikeUnits(String one, String other) {
            super(Kind.RULE, one + " and " + other + " are not units of the same kind");
        }
    }

    public static final class UnknownUnit extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public UnknownUnit(String code) {
            super(Kind.RULE, "'" + code + "' is not a unit code known here (UN/ECE Recommendation 20)", "unit");
        }
    }

    public static final class NotPositive extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NotPositive(String field) {
            super(Kind.RULE, "The " + field + " must be greater than zero", field);
        }
    }

    public static final class NegativeWeight extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NegativeWeight() {
            super(Kind.RULE, "A share cannot be weighted below zero");
        }
    }

    public static final class NothingToShareOver extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NothingToShareOver() {
            super(Kind.RULE, "There is nothing to share the amount over");
        }
    }

    /** Text that should be an id. */
    public static final class NotAnId extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NotAnId(String text) {
            super(Kind.NOT_FOUND, "'" + text + "' is not an id of anything here");
        }
    }

    /** A required text is missing, or too long. */
    public static final class BadText extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public BadText(String field, String what) {
            super(Kind.RULE, "The " + field + " " + what, field);
        }
    }
}
