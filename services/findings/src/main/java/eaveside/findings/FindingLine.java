package eaveside.findings;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitId;
import java.time.Instant;

/**
 * A finding in a list.
 *
 * @param  actions how many have been taken; 0 where none has yet
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
