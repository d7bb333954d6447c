package eaveside.visits;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.OfferingId;
import eaveside.kernel.Quantity;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.kernel.VisitLineId;
import eaveside.visits.internal.BookingRules;
import eaveside.visits.internal.NewVisit;
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
public class BookVisit {
    private final Visits visits;
    private final BookingRules rules;

    @Inject
    public BookVisit(Visits visits, BookingRules rules) {
        this.visits = visits;
        this.rules = rules;
    }

    /**
     * A visit without a quote; it is priced from the book in force on its day.
     *
     * @param id made by the client
     */
    public record Booking(
            VisitId id,
            CustomerId customer,
            SiteId site,
            LocalDate date,
            List<UserId> crew,
            List<Line> lines,
            String note,
            UserId by) {
        public Booking {
            crew = List.copyOf(crew);
            lines = List.copyOf(lines);
            note = Texts.optional("note", note, 2000);
        }
    }

    /** Planned work. */
    public record Line(
            VisitLineId id, OfferingId offering, @Nullable SurfaceId surface, Quantity quantity) {}

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
     * Books freely. Refuses a customer or site out of use, a site or surface of another customer or site, an offering
     * that does not fit its surface, and a crew that is not on the staff; the same again is a retry.
     */
    @Transactional
    public Visit book(Booking booking) {
        return once(booking.id(), Fingerprint.of(booking), () -> rules.plan(booking));
    }

    /** Books what an agreed quote offers, at its prices. Refuses a quote that is not agreed or is booked already. */
    @Transactional
    public Visit book(FromQuote booking) {
        return once(booking.id(), Fingerprint.of(booking), () -> rules.plan(booking));
    }

    /** Books all that waits for a return to the visit, at its prices. Refuses where nothing does. */
    @Transactional
    public Visit book(Return booking) {
        return once(booking.id(), Fingerprint.of(booking), () -> rules.plan(booking));
    }

    private Visit once(VisitId id, Fingerprint fingerprint, Supplier<NewVisit> plan) {
        return visits.alreadyBooked(id, fingerprint).orElseGet(() -> visits.add(plan.get(), fingerprint));
    }
}
