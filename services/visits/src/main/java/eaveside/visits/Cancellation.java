package eaveside.visits;

import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;

/** @param  version of the visit as it was read */
public record Cancellation(VisitId visit, int version, String reason, UserId by) implements VisitEdit {
    public Cancellation {
        reason = Texts.required("reason", reason, 500);
    }
}
