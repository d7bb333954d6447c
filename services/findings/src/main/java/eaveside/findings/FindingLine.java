package eaveside.findings;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitId;
import java.time.Instant;

/**
 * A finding in a list.
 *
 * @param  actions how many answers it has had; 0 means that it still waits for the first
 */
public record FindingLine(
        FindingId id,
        FindingTypeCode type,
        String typeName,
        Severity severity,
        VisitId visit,
        CustomerId customer,
        SiteId site,
        String note,
        boolean customerNotified,
        Instant openedAt,
        int photos,
        int actions,
        FindingView.Status status) {}
