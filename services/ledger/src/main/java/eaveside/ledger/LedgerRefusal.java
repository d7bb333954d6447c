package eaveside.ledger;

import eaveside.kernel.Refusal;
import java.time.LocalDate;

/** What the ledger refuses. */
public abstract sealed class LedgerRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private LedgerRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    /** No company has been founded in this database. */
    public static final class NotFounded extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public NotFounded() {
            super(Type.RULE, "No company has been set up here yet");
        }
    }

    public static final class AlreadyFounded extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyFounded() {
            super(Type.CONFLICT, "The company has been set up already");
        }
    }

    /** Every figure ever posted depends on it. */
    public static final class Unchangeable extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public Unchangeable(String field) {
            super(Type.RULE, "{field} cannot change once the books are open", field);
        }
    }

    /** A free journal may not touch an account that other documents explain. */
    public static final class ControlledAccount extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public ControlledAccount(String code, String name) {
            super(
                    Type.RULE,
                    "Account " + code + " (" + name + ") is kept by the documents behind it and takes no free journal",
                    "account");
        }
    }

    /** A service line, visit or customer is missing where the account requires it. */
    public static final class MissingDimension extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public MissingDimension(String account, String dimension) {
            super(Type.RULE, "An entry on " + account + " must name its " + dimension, dimension);
        }
    }

    public static final class ZeroEntry extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public ZeroEntry(String account) {
            super(Type.RULE, "The entry on " + account + " is zero", "amount");
        }
    }

    public static final class OutOfBalance extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public OutOfBalance(String difference) {
            super(Type.RULE, "Debits and credits differ by " + difference, "lines");
        }
    }

    public static final class TooFewEntries extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public TooFewEntries() {
            super(Type.RULE, "A journal has at least one debit and one credit", "lines");
        }
    }

    public static final class DateInFuture extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public DateInFuture(LocalDate date, LocalDate today) {
            super(Type.RULE, date + " is later than today, " + today, "date");
        }
    }

    public static final class AlreadyReversed extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyReversed(String document, String by) {
            super(Type.CONFLICT, document + " has already been reversed, by " + by);
        }
    }

    /** Reversals are final; enter the document again instead. */
    public static final class NotReversible extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public NotReversible(String document, String why) {
            super(Type.RULE, document + " cannot be reversed here: " + why);
        }
    }

    /** A document dated before something that it rests on. */
    public static final class BeforeBasis extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public BeforeBasis(LocalDate date, String basis, LocalDate of) {
            super(Type.RULE, "The date " + date + " is before " + of + ", the day of " + basis, "date");
        }

        private BeforeBasis(String counting, LocalDate of, String basis) {
            super(Type.RULE, counting + ", before " + of + ", the day of " + basis, "date");
        }

        /** Of a day that nobody has named: the first on which a document of its type can count. */
        public static BeforeBasis counting(LocalDate day, String basis, LocalDate of) {
            return new BeforeBasis("It would count from " + day, of, basis);
        }
    }

    /** From a day to an earlier one. */
    public static final class BadSpan extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public BadSpan(LocalDate from, LocalDate to) {
            super(Type.RULE, "The last day, " + to + ", is before the first, " + from, "to");
        }
    }

    /** The close of a month records its variances beside the ledger; it never moves money between accounts. */
    public static final class CloseMovesMoney extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public CloseMovesMoney() {
            super(Type.RULE, "The close of a month has no entries of its own", "entries");
        }
    }

    public static final class PeriodNotClosable extends LedgerRefusal {
        private static final long serialVersionUID = 1;

        public PeriodNotClosable(String month, String why) {
            super(Type.RULE, "{field} " + month + " cannot be closed: " + why, "month");
        }
    }
}
