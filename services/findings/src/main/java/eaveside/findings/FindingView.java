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

/** A finding whole: what was seen, its photos in order, and its answers, oldest first. */
public record FindingView(
        FindingId id,
        FindingKind kind,
        Severity severity,
        State state,
        VisitId visit,
        CustomerId customer,
        SiteId site,
        @Nullable SurfaceId surface,
        String note,
        boolean customerTold,
        UserId openedBy,
        Instant openedAt,
        List<Photo> photos,
        List<Given> answers) {
    public FindingView {
        photos = List.copyOf(photos);
        answers = List.copyOf(answers);
    }

    /** Where a finding stands. */
    public enum State {
        OPEN,
        CLOSED,
        /** Its visit sheet was reversed. */
        WITHDRAWN
    }

    /** An answer with the time it was given. */
    public record Given(Answer answer, Instant at) {}
}
