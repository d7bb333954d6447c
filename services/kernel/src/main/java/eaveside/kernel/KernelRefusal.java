package eaveside.kernel;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.function.Function;
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

    /** More than anything here can be; a number is refused by its digits before it has a field. */
    public static final class TooLarge extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public TooLarge() {
            super(Type.RULE, "{field} is too large");
        }

        /** @param  fields that the amount follows from */
        public TooLarge(Money amount, String... fields) {
            super(Type.RULE, "It comes to " + amount + ", more than the books can hold", fields);
        }

        public TooLarge(String field, String value) {
            super(Type.RULE, "{field} cannot be as large as " + value, field);
        }
    }

    public static final class UnlikeCurrencies extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  fields where the other one was said, where that is known */
        public UnlikeCurrencies(String one, String other, String... fields) {
            super(Type.RULE, one + " and " + other + " cannot be added or compared", fields);
        }
    }

    public static final class UnlikeUnits extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  fields what the quantity was entered in, where that is known */
        public UnlikeUnits(Unit one, Unit other, String... fields) {
            super(
                    Type.RULE,
                    "Units do not match: " + one.words() + " and " + other.words()
                            + ". Enter the quantity in another unit",
                    fields);
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

    /** The key of a page to go on from that no page of the list gave. */
    public static final class BadPageKey extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public BadPageKey() {
            super(Type.MALFORMED, "{field} must be the 'next' of a page of this list", "after");
        }
    }

    public static final class Negative extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public Negative(String field) {
            super(Type.RULE, "{field} cannot be below zero", field);
        }
    }

    /** A part of a piece, where only whole ones are counted. */
    public static final class NotWhole extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NotWhole(String field, Quantity quantity) {
            super(
                    Type.RULE,
                    "{field} must be a whole number of pieces, not "
                            + quantity.value().toPlainString(),
                    field);
        }
    }

    /** A list without a single row. */
    public static final class NoRows extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public NoRows(String field) {
            super(Type.RULE, "{field} must have at least one row", field);
        }
    }

    public static final class TooMany extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public TooMany(String field, int rows, int most) {
            super(Type.RULE, "{field} must have at most " + most + " rows, not " + rows, field);
        }
    }

    /** One thing is named in two rows of a list. */
    public static final class Twice extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  field that of one of the rows */
        public Twice(String field) {
            super(Type.RULE, "{field} is named twice", field);
        }
    }

    /** A unit that something is not counted in. */
    public static final class WrongUnit extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  fitting the units that the field takes, at least one */
        public WrongUnit(String field, Unit unit, List<Unit> fitting) {
            super(Type.RULE, "{field} must be in " + either(fitting) + ", not in " + named(unit), field);
        }

        /** @param  what is counted in those units, such as {@code Truck soap} */
        public WrongUnit(String field, String what, Unit unit, List<Unit> fitting) {
            super(
                    Type.RULE,
                    "{field} must be in " + either(fitting) + " for " + what + ", not in " + named(unit),
                    field);
        }

        private static String either(List<Unit> units) {
            return units.stream().map(WrongUnit::named).collect(Collectors.joining(" or "));
        }

        private static String named(Unit unit) {
            return unit.words() + " (" + unit.code() + ")";
        }
    }

    /** A date before the first one that is possible. */
    public static final class TooEarly extends KernelRefusal {
        private static final long serialVersionUID = 1;

        public TooEarly(String field, LocalDate date, LocalDate earliest) {
            super(Type.RULE, pattern(date, earliest), field);
        }

        /** @param  because why none before is possible */
        public TooEarly(String field, LocalDate date, LocalDate earliest, String because) {
            super(Type.RULE, pattern(date, earliest) + ": " + because, field);
        }

        private static String pattern(LocalDate date, LocalDate earliest) {
            return "{field} must be " + earliest + " or later, not " + date;
        }
    }

    /** A date after the last one that is possible. */
    public static final class TooLate extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  because why none after is possible */
        public TooLate(String field, LocalDate date, LocalDate latest, String because) {
            super(Type.RULE, "{field} must be " + latest + " or earlier, not " + date + ": " + because, field);
        }
    }

    /** What cannot change once the thing is saved, because other things count on it. */
    public static final class Fixed extends KernelRefusal {
        private static final long serialVersionUID = 1;

        /** @param  what the thing in one or two words, such as {@code price book} */
        public Fixed(String what, String field) {
            super(
                    Type.RULE,
                    "{field} cannot change once the " + what + " is saved. Add another " + what + " instead",
                    field);
        }
    }

    /** A code, name or label that must be unique belongs to another thing. */
    public static final class Taken extends KernelRefusal {
        private static final long serialVersionUID = 1;

        private final String what;
        private final String field;

        /** @param  what the thing in one or two words, such as {@code price book} */
        public Taken(String what, String field, String value) {
            super(Type.CONFLICT, "{field} '" + value + "' is taken by another " + what + ". Choose another one", field);
            this.what = what;
            this.field = field;
        }

        @Override
        public String code() {
            return what.replace(' ', '-') + "." + field + "-taken";
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
                    joined(refusals, Refusal::said));
            this.refusals = List.copyOf(refusals);
        }

        public List<Refusal> refusals() {
            return refusals == null ? List.of() : refusals;
        }

        @Override
        public List<String> fields() {
            return refusals().stream()
                    .flatMap(refusal -> refusal.fields().stream())
                    .distinct()
                    .toList();
        }

        @Override
        public String text() {
            return joined(refusals(), Refusal::text);
        }

        @Override
        public String said() {
            return joined(refusals(), Refusal::said);
        }

        private static String joined(List<Refusal> refusals, Function<Refusal, String> words) {
            return refusals.stream().map(words).distinct().collect(Collectors.joining(". "));
        }

        @Override
        public List<Problem> problems() {
            return refusals().stream().flatMap(r -> r.problems().stream()).toList();
        }

        @Override
        Refusal placed(String before, Set<String> within) {
            refusals().forEach(refusal -> refusal.placed(before, within));
            return this;
        }

        @Override
        Refusal moved(String element, String to, Map<String, String> names) {
            refusals().forEach(refusal -> refusal.moved(element, to, names));
            return this;
        }

        @Override
        public Refusal called(String field, String name) {
            refusals().forEach(refusal -> refusal.called(field, name));
            return this;
        }

        @Override
        Refusal moved(String list, String to) {
            refusals().forEach(refusal -> refusal.moved(list, to));
            return this;
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
            this(type, "There is no " + what + " " + id, what, id, fields);
        }

        private NotFound(Type type, String message, String what, String id, String[] fields) {
            super(type, message, fields);
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

        /** The same, with what the reader can do about it. */
        public NotFound namedBy(String field, String advice) {
            return new NotFound(Type.RULE, text() + ". " + advice, what, id, new String[] {field});
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
                    "Another user saved this " + what + " first. " + difference(yours.differencesFrom(theirs)),
                    yours.differencesFrom(theirs).toArray(String[]::new));
            this.what = what;
            this.yours = yours;
            this.theirs = theirs;
        }

        private static String difference(List<String> parts) {
            return parts.equals(List.of("version"))
                    ? "Load it again"
                    : "It differs in "
                            + parts.stream()
                                    .map(part -> CamelCase.words(part.substring(part.lastIndexOf('.') + 1), " "))
                                    .collect(Collectors.joining(", "));
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
            this(what, id, by, "id");
        }

        /** @param  field where the id was given */
        public IdTaken(String what, Object id, String by, String field) {
            super(Type.CONFLICT, "The id " + id + " is taken by the " + what + " " + by, field);
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
