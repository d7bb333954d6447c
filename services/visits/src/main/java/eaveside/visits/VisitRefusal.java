package eaveside.visits;

import eaveside.kernel.Check;
import eaveside.kernel.Quantity;
import eaveside.kernel.Refusal;
import eaveside.kernel.UserId;
import java.time.LocalDate;
import java.util.List;
import java.util.Locale;
import java.util.Set;

/** What visits refuse. */
public abstract sealed class VisitRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private VisitRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    private static String words(Enum<?> name) {
        return name.name().toLowerCase(Locale.ROOT).replace('_', ' ');
    }

    /** A technician asks for a visit whose crew is others. */
    public static final class NotYours extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NotYours() {
            super(Type.FORBIDDEN, "This visit is another crew's");
        }
    }

    /** A technician draws from a location that is no van of the visit's crew. */
    public static final class NotYourVan extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NotYourVan(String location) {
            super(Type.FORBIDDEN, location + " is not a van of this visit's crew", "location");
        }
    }

    /** The visit's state does not allow it. */
    public static final class WrongStatus extends VisitRefusal {
        private static final long serialVersionUID = 1;

        /** @param  fields where the visit was named, if it was */
        public WrongStatus(VisitStatus is, VisitStatus needed, String... fields) {
            super(Type.CONFLICT, "The visit is " + words(is) + ". It must be " + words(needed), fields);
        }
    }

    /** A reversal names a document that is no longer in force for its visit. */
    public static final class NotInForce extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NotInForce() {
            super(Type.CONFLICT, "Another document is in force for this visit. Load the visit again");
        }
    }

    public static final class NoCrew extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NoCrew() {
            super(Type.RULE, "Choose a crew of one or more users, each once", "crew");
        }

        static void check(Check check, List<UserId> crew) {
            check.that(!crew.isEmpty() && Set.copyOf(crew).size() == crew.size(), NoCrew::new);
        }
    }

    public static final class OtherSite extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public OtherSite(String what) {
            super(Type.RULE, "{field} belongs to another site or customer", what);
        }
    }

    public static final class QuoteNotAccepted extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public QuoteNotAccepted(long number) {
            super(Type.RULE, "Quote " + number + " is not accepted. Accept it first", "quote");
        }
    }

    public static final class QuoteAlreadyScheduled extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public QuoteAlreadyScheduled(long number) {
            super(Type.CONFLICT, "A visit is scheduled for quote " + number + " already", "quote");
        }
    }

    /** No scope change of the visit is decided as a return visit, or one is scheduled already. */
    public static final class NothingToReturnFor extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NothingToReturnFor() {
            super(Type.RULE, "No skipped work of this visit needs a return visit", "returnsTo");
        }
    }

    public static final class NotOnVisit extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NotOnVisit(String field, String id) {
            super(Type.RULE, "The visit has no " + field + " " + id, field);
        }

        /** A service line that a consumable is to be the cost of. */
        public NotOnVisit() {
            super(Type.RULE, "{field} must be one that the visit has work of, or none", "serviceLine");
        }
    }

    public static final class LineMissing extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public LineMissing(String line) {
            super(Type.RULE, "The job sheet does not account for planned line " + line, "lines");
        }
    }

    /** Done and skipped units of a line do not make up what was planned. */
    public static final class LineNotAccounted extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public LineNotAccounted(String line, Quantity planned, Quantity done, Quantity skipped) {
            super(
                    Type.RULE,
                    "Of " + planned.said() + " planned on line " + line + ", " + done.said() + " done and "
                            + skipped.said()
                            + " skipped. Done and skipped must add up to the plan. More than planned is extra work",
                    "lines");
        }
    }

    /** A return visit for the skipped work is scheduled already. */
    public static final class ReturnScheduled extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public ReturnScheduled() {
            super(Type.CONFLICT, "A return visit for this work is scheduled. Cancel it first");
        }
    }

    /** The day of the work is so far from the day that was planned that it can only be a slip. */
    public static final class DayFarFromPlan extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public DayFarFromPlan(LocalDate completedOn, LocalDate planned, int most) {
            super(
                    Type.RULE,
                    "{field} " + completedOn + " is more than " + most + " days from " + planned
                            + ", the planned date. Correct it, or have the visit moved first",
                    "completedOn");
        }
    }

    /** A form without a single field. */
    public static final class NothingSent extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NothingSent() {
            super(Type.MALFORMED, "The job sheet that was sent has no fields", "fields");
        }
    }

    /** Consumables were used but the signer has no van and named no location. */
    public static final class NoLocation extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public NoLocation() {
            super(Type.RULE, "Choose the van or store room that the consumables came from", "location");
        }
    }

    public static final class DecisionNotPossible extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public DecisionNotPossible(ScopeDecision decision, ScopeChangeType type) {
            super(
                    Type.RULE,
                    "{field} cannot be '" + words(decision) + "' for work that was "
                            + (type == ScopeChangeType.SKIPPED ? "skipped" : "done beyond the plan"),
                    "decision");
        }
    }

    /** The visit has scope changes that are not decided. */
    public static final class Undecided extends VisitRefusal {
        private static final long serialVersionUID = 1;

        public Undecided(long scopeChanges) {
            super(
                    Type.RULE,
                    scopeChanges == 1
                            ? "One scope change is not decided. Decide it first"
                            : scopeChanges + " scope changes are not decided. Decide them first",
                    "scopeChanges");
        }
    }
}
