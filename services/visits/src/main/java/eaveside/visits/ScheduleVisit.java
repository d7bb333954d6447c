package eaveside.visits;

import eaveside.access.RecordAudit;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Shared;
import eaveside.visits.internal.SchedulingRules;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.Optional;

/** Schedules a visit: from an accepted quote, to return for what an earlier visit skipped, or with work of its own. */
@Shared
public class ScheduleVisit {
    private final Visits visits;
    private final SchedulingRules rules;
    private final RecordAudit audit;

    @Inject
    public ScheduleVisit(Visits visits, SchedulingRules rules, RecordAudit audit) {
        this.visits = visits;
        this.rules = rules;
        this.audit = audit;
    }

    /**
     * The visit, scheduled; the same command again answers it as it is now. Refuses a quote that is not accepted or is
     * scheduled already, an earlier visit without work to return for, a customer or site that is no longer active, a site
     * or surface of another customer or site, a service that does not fit its surface, a crew that is not on the staff, a day
     * far away, and more work than a visit takes.
     */
    @Transactional
    public Visit schedule(Scheduling scheduling) {
        Fingerprint fingerprint = Fingerprint.of(scheduling);
        Optional<Visit> before = visits.alreadyScheduled(scheduling.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        Visit visit = visits.add(rules.plan(scheduling), fingerprint);
        audit.done("visit.schedule", scheduling.by(), scheduling.id());
        return visit;
    }
}
