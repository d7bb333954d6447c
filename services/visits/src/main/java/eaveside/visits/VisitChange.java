package eaveside.visits;

import eaveside.kernel.UserId;
import java.time.Instant;
import java.time.LocalDate;

/** A visit was moved to another day or crew, or cancelled, and why. */
public record VisitChange(Kind kind, LocalDate from, LocalDate to, String reason, UserId by, Instant at) {
    /** What changed. */
    public enum Kind {
        MOVED,
        CANCELLED
    }
}
