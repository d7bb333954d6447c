package eaveside.customers;

import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.Unit;
import java.util.Locale;
import java.util.stream.Collectors;

/** What this module refuses. */
public abstract sealed class CustomersRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private CustomersRefusal(Kind kind, String message, String... fields) {
        super(kind, message, fields);
    }

    public static final class NoSuchCustomer extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchCustomer(String id) {
            super(Kind.NOT_FOUND, "There is no customer " + id);
        }
    }

    public static final class NoSuchContact extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchContact(String id) {
            super(Kind.NOT_FOUND, "There is no contact " + id);
        }
    }

    public static final class NoSuchSite extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchSite(String id) {
            super(Kind.NOT_FOUND, "There is no site " + id);
        }
    }

    public static final class NoSuchSurface extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchSurface(String id) {
            super(Kind.NOT_FOUND, "There is no surface " + id);
        }
    }

    /** A maker must be entered, with its limits, before a surface can name it. */
    public static final class NoSuchMaker extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchMaker(MakerName name) {
            super(Kind.RULE, "The module maker " + name + " has not been entered yet", "moduleMaker");
        }
    }

    public static final class MakerTaken extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public MakerTaken(MakerName name) {
            super(Kind.CONFLICT, "The module maker " + name + " has been entered already", "name");
        }
    }

    /** A site, contact or surface stays where it was entered, and a surface of its kind. */
    public static final class Fixed extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public Fixed(String field) {
            super(Kind.RULE, "The " + field + " cannot be changed once it is saved", field);
        }
    }

    public static final class NotActive extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NotActive(String name) {
            super(Kind.RULE, name + " is no longer active");
        }
    }

    public static final class UnknownCountry extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public UnknownCountry(String country) {
            super(Kind.RULE, country + " is not a country code of ISO 3166-1", "country");
        }
    }

    public static final class NotAnEmail extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NotAnEmail(String text) {
            super(Kind.RULE, text + " is not an e-mail address", "email");
        }
    }

    public static final class OutOfRange extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public OutOfRange(String field, int value, int lowest, int highest) {
            super(
                    Kind.RULE,
                    "The " + field + " must lie between " + lowest + " and " + highest + ", not " + value,
                    field);
        }
    }

    public static final class NotForThisKind extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NotForThisKind(String field, SurfaceKind kind) {
            super(Kind.RULE, "A surface of kind " + lower(kind) + " has no " + field, field);
        }
    }

    public static final class UnitDoesNotFit extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public UnitDoesNotFit(SurfaceKind kind, Unit unit) {
            super(
                    Kind.RULE,
                    "A surface of kind " + lower(kind) + " is counted in "
                            + kind.units().stream().map(Unit::code).collect(Collectors.joining(" or "))
                            + ", not in " + unit.code(),
                    "extent");
        }
    }

    public static final class NotWhole extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public NotWhole(Quantity extent) {
            super(Kind.RULE, extent + " is not a whole number of pieces", "extent");
        }
    }

    /** The key of a next page that no list here gave out. */
    public static final class BadPageKey extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public BadPageKey() {
            super(Kind.MALFORMED, "This is not the key of a page of this list", "after");
        }
    }

    /** The file cannot be read as a table of this format at all. */
    public static final class UnreadableFile extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public UnreadableFile(String why) {
            super(Kind.RULE, "The file cannot be imported: " + why, "file");
        }
    }

    /** A cell of an import file says nothing that its column can hold. */
    public static final class BadCell extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        public BadCell(Enum<?> column, String text, String expected) {
            super(
                    Kind.RULE,
                    "The " + ImportColumn.title(column) + " must be " + expected + ", not "
                            + (text.isEmpty() ? "empty" : "'" + text + "'"),
                    ImportColumn.title(column));
        }
    }

    /** Some rows are bad, so nothing was imported; carries the same report as the dry run. */
    public static final class BadRows extends CustomersRefusal {
        private static final long serialVersionUID = 1;

        private final transient ImportReport report;

        public BadRows(ImportReport report) {
            super(
                    Kind.RULE,
                    "Nothing was imported: " + report.badRows().size() + " rows are bad, the first in line "
                            + report.badRows().getFirst().line() + ": "
                            + report.badRows().getFirst().reason(),
                    "file");
            this.report = report;
        }

        public ImportReport report() {
            return report;
        }
    }

    private static String lower(SurfaceKind kind) {
        return kind.name().toLowerCase(Locale.ROOT);
    }
}
