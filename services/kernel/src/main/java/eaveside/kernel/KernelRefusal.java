package eaveside.kernel;

import java.util.Comparator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** Values that cannot be: what the constructors of the kernel's types refuse. */
public abstract sealed class KernelRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private KernelRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    /** More decimals than the currency or unit can hold. */
    public static final class TooManyDecimals extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public TooManyDecimals(String value, String of, int decimals) {
            super(Type.RULE, value + " has more decimals than " + of + " allows (" + decimals + ")");
        }
    }

    /** More digits in front of the decimal point than anything here can have. */
    public static final class TooLarge extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public TooLarge() {
            super(Type.RULE, "The number is too large");
        }
    }

    public static final class UnlikeCurrencies extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public UnlikeCurrencies(String one, String other) {
            super(Type.RULE, one + " and " + other + " cannot be added or compared");
        }
    }

    public static final class UnlikeUnits extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  fields what the quantity was entered in, where that is known */
        public UnlikeUnits(Unit one, Unit other, String... fields) {
            super(
                    Type.RULE,
                    "Units do not match: " + words(one) + " and " + words(other)
                            + ". Enter the quantity in another unit",
                    fields);
        }

        private static String words(Unit unit) {
            return unit.name().toLowerCase(Locale.ROOT).replace('_', ' ');
        }
    }

    public static final class UnknownUnit extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public UnknownUnit(String code) {
            super(Type.RULE, "'" + code + "' is not a unit code known here (UN/ECE Recommendation 20)", "unit");
        }
    }

    public static final class NotPositive extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NotPositive(String field) {
            super(Type.RULE, "{field} must be greater than zero", field);
        }
    }

    public static final class NegativeWeight extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NegativeWeight() {
            super(Type.RULE, "A share cannot be weighted below zero");
        }
    }

    public static final class NothingToShareOver extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NothingToShareOver() {
            super(Type.RULE, "There is nothing to share the amount over");
        }
    }

    /** Text that should be an id. */
    public static final class NotAnId extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NotAnId(String text) {
            super(Type.NOT_FOUND, "'" + text + "' is not an id of anything here");
        }
    }

    /** A required text is missing, or too long. */
    public static final class BadText extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public BadText(String field, String what) {
            super(Type.RULE, "{field} " + what, field);
        }
    }

    /** A number outside of what its field can say. */
    public static final class OutOfRange extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public OutOfRange(String field, int number, int lowest, int highest) {
            super(Type.RULE, "{field} must be between " + lowest + " and " + highest + ", not " + number, field);
        }
    }

    /** Several things that are wrong with one input, all told at once. */
    public static final class Several extends KernelRefusal {
        private static final long serialVersionUID = 1;

        private final transient List<Refusal> refusals;

        /** @param  refusals at least one */
        public Several(List<Refusal> refusals) {
            super(
                    refusals.stream()
                            .map(Refusal::type)
                            .min(Comparator.naturalOrder())
                            .orElseThrow(),
                    refusals.stream().map(Refusal::text).distinct().collect(Collectors.joining(". ")),
                    refusals.stream()
                            .flatMap(r -> r.fields().stream())
                            .distinct()
                            .toArray(String[]::new));
            this.refusals = List.copyOf(refusals);
        }

        public List<Refusal> refusals() {
            return refusals == null ? List.of() : refusals;
        }

        @Override
        public List<Problem> problems() {
            return refusals().stream().flatMap(r -> r.problems().stream()).toList();
        }
    }

    /** No such thing as the one asked for. */
    public static final class NotFound extends KernelRefusal {
        private static final long serialVersionUID = 1;

        private final String what;
        private final String id;

        /**
         * @param  what the thing in one or two words, such as {@code price book}
         * @param  id   as it was asked for
         */
        public NotFound(String what, Object id) {
            this(Type.NOT_FOUND, what, id.toString());
        }

        private NotFound(Type type, String what, String id, String... fields) {
            super(type, "There is no " + what + " " + id, fields);
            this.what = what;
            this.id = id;
        }

        /** As it was asked for. */
        public String id() {
            return id;
        }

        /** The same where a field named it: there is something at the address, but what was entered is wrong. */
        public NotFound namedBy(String field) {
            return new NotFound(Type.RULE, what, id, field);
        }

        @Override
        public String code() {
            return what.replace(' ', '-') + ".not-found";
        }
    }

    /** Somebody else saved first, or one id was used for two contents. Carries both, to compare. */
    public static final class Stale extends KernelRefusal {
        private static final long serialVersionUID = 1;

        private final String what;
        private final transient Versioned yours;
        private final transient Versioned theirs;

        /**
         * @param  yours  what was not saved
         * @param  theirs what is stored, with the version that the next save must name
         */
        public Stale(String what, Versioned yours, Versioned theirs) {
            super(
                    Type.CONFLICT,
                    "Another user saved this " + what + " first, with another "
                            + String.join(", ", yours.differencesFrom(theirs)),
                    yours.differencesFrom(theirs).toArray(String[]::new));
            this.what = what;
            this.yours = yours;
            this.theirs = theirs;
        }

        @Override
        public String code() {
            return what.replace(' ', '-') + ".stale";
        }

        @Override
        public Map<String, Object> details() {
            return Map.of("stored", theirs, "sent", yours);
        }

        public Versioned yours() {
            return yours;
        }

        public Versioned theirs() {
            return theirs;
        }
    }

    /** A new thing under an id, code or name that another has. */
    public static final class IdTaken extends KernelRefusal {
        private static final long serialVersionUID = 1;

        private final String what;

        /** @param  by the name of what has it */
        public IdTaken(String what, Object id, String by) {
            super(Type.CONFLICT, "The id " + id + " is taken by the " + what + " " + by, "id");
            this.what = what;
        }

        @Override
        public String code() {
            return what.replace(' ', '-') + ".id-taken";
        }
    }

    /** Something that is no longer active where an active one is needed. */
    public static final class NotActive extends KernelRefusal {
        private static final long serialVersionUID = 1;

        private final String what;

        public NotActive(String what, String name, String field) {
            super(Type.RULE, "The " + what + " " + name + " is no longer active", field);
            this.what = what;
        }

        @Override
        public String code() {
            return what.replace(' ', '-') + ".not-active";
        }
    }

    /** What was sent for a field cannot be what the field says. */
    public static final class Unfit extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  message with {@code {field}} where the field's name goes */
        public Unfit(String field, String message) {
            super(Type.RULE, message, field);
        }
    }
}
