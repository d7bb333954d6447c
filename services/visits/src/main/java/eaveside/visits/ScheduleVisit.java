package eaveside.visits;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.internal.NewVisit;
import eaveside.visits.internal.SchedulingRules;
import eaveside.visits.internal.Visits;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;

/** Books a visit: freely, from an agreed quote, or to come back for what an earlier visit skipped. */
@Dependent
public class ScheduleVisit {
    private final Visits visits;
    private final SchedulingRules rules;

    @Inject
    public ScheduleVisit(Visits visits, SchedulingRules rules) {
        this.visits = visits;
        this.rules = rules;
    }

    /**
     * A visit without a quote; it is priced from the book in force on its day.
     *
     * @param  id made by the client
     */
    public record Scheduling(
            VisitId id,
            CustomerId customer,
            SiteId site,
            LocalDate date,
            List<UserId> crew,
            List<Line> lines,
            String note,
            UserId by) {
        public Scheduling {
            crew = List.copyOf(crew);
            lines = List.copyOf(lines);
            note = Texts.optional("note", note, 2000);
        }
    }

    /** Planned work. */
    public record Line(
            VisitLineId id,
            ServiceItemId serviceItem,
            @Nullable SurfaceId surface,
            Quantity quantity) {}

    /** A visit that does what a quote offered. */
    public record FromQuote(VisitId id, QuoteId quote, LocalDate date, List<UserId> crew, String note, UserId by) {
        public FromQuote {
            crew = List.copyOf(crew);
            note = Texts.optional("note", note, 2000);
        }
    }

    /** A visit for the skipped work of an earlier one that the office decided to come back for. */
    public record Return(VisitId id, VisitId to, LocalDate date, List<UserId> crew, String note, UserId by) {
        public Return {
            crew = List.copyOf(crew);
            note = Texts.optional("note", note, 2000);
        }
    }

    /**
     * Books freely. Refuses a customer or site out of use, a site or surface of another customer or site, a service
     * that does not fit its surface, and a crew that is not on the staff; the same again is a retry.
     */
    @Transactional
    public Visit schedule(Scheduling scheduling) {
        return once(scheduling.id(), Fingerprint.of(scheduling), () -> rules.plan(scheduling));
    }

    /** Books what an agreed quote offers, at its prices. Refuses a quote that is not agreed or is booked already. */
    @Transactional
    public Visit schedule(FromQuote scheduling) {
        return once(scheduling.id(), Fingerprint.of(scheduling), () -> rules.plan(scheduling));
    }

    /** Books all that waits for a return to the visit, at its prices. Refuses where nothing does. */
    @Transactional
    public Visit schedule(Return scheduling) {
        return once(scheduling.id(), Fingerprint.of(scheduling), () -> rules.plan(scheduling));
    }

    private Visit once(VisitId id, Fingerprint fingerprint, Supplier<NewVisit> plan) {
        return visits.alreadyScheduled(id, fingerprint).orElseGet(() -> visits.add(plan.get(), fingerprint));
    }
}
