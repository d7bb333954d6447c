package eaveside.findings;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A finding whole: what was seen, its photos in order, and the actions on it, oldest first. */
public record FindingView(
        FindingId id,
        FindingType type,
        Severity severity,
        Status status,
        VisitId visit,
        CustomerId customer,
        SiteId site,
        @Nullable SurfaceId surface,
        String note,
        boolean customerNotified,
        UserId openedBy,
        Instant openedAt,
        List<Photo> photos,
        List<Action> actions) {
    public FindingView {
        photos = List.copyOf(photos);
        actions = List.copyOf(actions);
    }

    /** The status of a finding. */
    public enum Status {
        OPEN,
        CLOSED,
        /** Its job sheet was reversed. */
        WITHDRAWN
    }

    /** What was done, and when. */
    public record Action(FindingAction.Type type, FindingAction action, Instant at) {}
}
