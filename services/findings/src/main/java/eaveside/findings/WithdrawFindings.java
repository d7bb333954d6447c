package eaveside.findings;

import eaveside.findings.internal.FindingQueries;
import eaveside.findings.internal.FindingRow;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import jakarta.transaction.Transactional.TxType;
import java.time.Clock;
import java.util.List;

/** Withdraws the findings of a visit whose sheet is reversed, in the same transaction. */
@Shared
public class WithdrawFindings {
    private final FindingQueries queries;
    private final Clock clock;

    @Inject
    public WithdrawFindings(FindingQueries queries, Clock clock) {
        this.queries = queries;
        this.clock = clock;
    }

    /**
     * Withdraws those that are not withdrawn yet, closed ones too, and answers how many. What was told to the customer
     * meanwhile stays readable. Their photos can be shown again by the findings of the sheet that is entered next.
     */
    @Transactional(TxType.MANDATORY)
    public int ofVisit(VisitId visit, UserId by) {
        List<FindingRow> findings = queries.standingOfVisit(visit);
        findings.forEach(finding -> finding.withdraw(by, clock.instant()));
        return findings.size();
    }
}
