package eaveside.visits;

import eaveside.kernel.UserId;
import java.time.Instant;
import java.time.LocalDate;

/** A visit was moved to another day or crew, or canceled, and why. */
public record VisitChange(Type type, LocalDate from, LocalDate to, String reason, UserId by, Instant at) {
    /** What changed. */
    public enum Type {
        RESCHEDULED,
        CANCELED
    }
}
