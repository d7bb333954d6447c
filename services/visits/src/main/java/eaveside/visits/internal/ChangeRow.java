package eaveside.visits.internal;

import eaveside.kernel.UserId;
import eaveside.visits.VisitChange;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.time.Instant;
import java.time.LocalDate;

/** A move or cancellation, kept with its visit. */
@Embeddable
record ChangeRow(
        @Enumerated(EnumType.STRING) VisitChange.Type type,
        @Column(name = "from_date") LocalDate fromDate,
        @Column(name = "to_date") LocalDate toDate,
        String reason,
        @Column(name = "changed_by") UserId changedBy,
        @Column(name = "changed_at") Instant changedAt) {
    boolean says(VisitChange.Type asked, LocalDate to, String why, UserId by) {
        return type == asked && toDate.equals(to) && reason.equals(why) && changedBy.equals(by);
    }

    VisitChange toChange() {
        return new VisitChange(type, fromDate, toDate, reason, changedBy, changedAt);
    }
}
