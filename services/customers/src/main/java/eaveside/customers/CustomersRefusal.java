package eaveside.customers;

import eaveside.kernel.Refusal;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Collectors;

/** What this module refuses. */
public abstract sealed class CustomersRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private CustomersRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    /** The customer may have been entered before; carries with whom. Can be saved all the same. */
    public static final class PossibleDuplicate extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        private final transient List<Duplicate> duplicates;

        public PossibleDuplicate(List<Duplicate> duplicates) {
            super(
                    Type.CONFLICT,
                    "This may be a customer you have already: "
                            + duplicates.stream().map(PossibleDuplicate::words).collect(Collectors.joining(", "))
                            + ". Open that one, or save this one anyway",
                    fieldsOf(duplicates));
            this.duplicates = List.copyOf(duplicates);
        }

        @Override
        public Map<String, Object> details() {
            return Map.of("duplicates", duplicates);
        }

        public List<Duplicate> duplicates() {
            return duplicates;
        }

        private static String words(Duplicate duplicate) {
            return duplicate.name() + " (same "
                    + duplicate.because().stream()
                            .sorted()
                            .map(because ->
                                    because.name().toLowerCase(Locale.ROOT).replace('_', ' '))
                            .collect(Collectors.joining(", "))
                    + ")";
        }

        private static String[] fieldsOf(List<Duplicate> duplicates) {
            return duplicates.stream()
                    .flatMap(duplicate -> duplicate.because().stream())
                    .distinct()
                    .sorted()
                    .map(because -> switch (because) {
                        case PHONE -> "phone";
                        case EMAIL -> "email";
                        case NAME_AND_ADDRESS -> "name";
                    })
                    .toArray(String[]::new);
        }
    }

    /** What was merged is one customer from then on. */
    public static final class MergedAlready extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public MergedAlready(String field, String into) {
            super(Type.CONFLICT, "This customer was merged into " + into + " already", field);
        }
    }

    public static final class MergedIntoItself extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public MergedIntoItself() {
            super(Type.RULE, "A customer cannot be merged into itself", "into");
        }
    }

    public static final class UnknownCountry extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public UnknownCountry(String country) {
            super(Type.RULE, country + " is not a country code of ISO 3166-1", "country");
        }
    }

    public static final class NotAnEmail extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NotAnEmail(String text) {
            super(Type.RULE, text + " is not an email address", "email");
        }
    }

    public static final class NotForThisType extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NotForThisType(String field, SurfaceType type) {
            super(Type.RULE, "A surface of type " + lower(type) + " has no " + field, field);
        }
    }

    /** The file cannot be read as a table of this format at all. */
    public static final class UnreadableFile extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public UnreadableFile(String why) {
            super(Type.RULE, "The file cannot be imported: " + why, "file");
        }
    }

    /** A cell of an import file says nothing that its column can hold. */
    public static final class BadCell extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public BadCell(String column, String text, String expected) {
            super(
                    Type.RULE,
                    "The " + column + " must be " + expected + ", not " + (text.isEmpty() ? "empty" : "'" + text + "'"),
                    column);
        }
    }

    /** Nothing of a file was imported; carries the same report as the dry run. */
    public abstract static sealed class NotImported extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        private final transient ImportReport report;

        private NotImported(Type type, String why, ImportReport report) {
            super(type, "Nothing was imported: " + why, "file");
            this.report = report;
        }

        public ImportReport report() {
            return report;
        }

        @Override
        public Map<String, Object> details() {
            return Map.of("rows", report.rows(), "badRows", report.badRows(), "duplicateRows", report.duplicateRows());
        }
    }

    /** Some rows are bad. */
    public static final class BadRows extends NotImported {
        private static final long serialVersionUID = 1;

        public BadRows(ImportReport report) {
            super(
                    Type.RULE,
                    (report.badRowCount() == 1
                                    ? "one row is bad, in line "
                                    : report.badRowCount() + " rows are bad, the first in line ")
                            + report.badRows().getFirst().line() + ": "
                            + report.badRows().getFirst().reason(),
                    report);
        }
    }

    /** Some new customers may be here already. Can be imported all the same. */
    public static final class DuplicateRows extends NotImported {
        private static final long serialVersionUID = 1;

        public DuplicateRows(ImportReport report) {
            super(
                    Type.CONFLICT,
                    report.duplicateRows().getFirst().name() + " in line "
                            + report.duplicateRows().getFirst().line() + " may be the same customer as "
                            + report.duplicateRows().getFirst().otherName()
                            + ". Look at the rows named, or import them all the same",
                    report);
        }
    }

    private static String lower(SurfaceType type) {
        return type.name().toLowerCase(Locale.ROOT);
    }
}
