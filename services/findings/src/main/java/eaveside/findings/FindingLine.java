package eaveside.findings;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.SiteId;
import eaveside.kernel.VisitId;
import java.time.Instant;

/**
 * A finding in a list.
 *
 * @param answers how many answers it has had; 0 means that it still waits for the first
 */
public record FindingLine(
        FindingId id,
        KindCode kind,
        String kindName,
        Severity severity,
        VisitId visit,
        CustomerId customer,
        SiteId site,
        String note,
        boolean customerTold,
        Instant openedAt,
        int photos,
        int answers,
        FindingView.State state) {}
