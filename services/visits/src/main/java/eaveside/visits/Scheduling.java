package eaveside.visits;

import eaveside.kernel.Check;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Default;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.QuoteId;
import eaveside.kernel.SiteId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What to schedule. A quote and an earlier visit each say the site and the work; without either, both are named here.
 *
 * @param  id        made by the client
 * @param  quote     whose work is done, at its prices
 * @param  returnsTo the earlier visit whose skipped work is done, at its prices
 * @param  customer  of the site; whoever it belongs to where it is absent
 * @param  lines     the work at the site, priced from the price book in force on the day
 */
public record Scheduling(
        VisitId id,
        @Nullable QuoteId quote,
        @Nullable VisitId returnsTo,
        @Nullable CustomerId customer,
        @Nullable SiteId site,
        LocalDate date,
        List<UserId> crew,
        @Default List<ScheduledLine> lines,
        @Default String note,
        UserId by) {
    public Scheduling {
        crew = List.copyOf(crew);
        List<ScheduledLine> each = List.copyOf(lines);
        lines = each;
        Check check = new Check();
        note = check.optional("note", note, 2000);
        VisitRefusal.NoCrew.check(check, crew);
        if (quote == null && returnsTo == null) {
            check.that(
                    site != null,
                    () -> new KernelRefusal.Unfit("site", "{field} is required without a quote or an earlier visit"));
            check.that(!lines.isEmpty(), () -> new KernelRefusal.NoRows("lines"));
            check.passes(() -> Elements.requireDistinct("lines", each, "id", ScheduledLine::id));
        } else {
            check.that(quote == null || returnsTo == null, () -> said("returnsTo"));
            check.that(customer == null, () -> said("customer"));
            check.that(site == null, () -> said("site"));
            check.that(lines.isEmpty(), () -> said("lines"));
        }
        check.done();
    }

    private static KernelRefusal said(String field) {
        return new KernelRefusal.Unfit(
                field, "{field} cannot be named: the quote or the earlier visit already says it");
    }

    /** Does what an accepted quote offers. */
    public static Scheduling fromQuote(
            VisitId id, QuoteId quote, LocalDate date, List<UserId> crew, String note, UserId by) {
        return new Scheduling(id, quote, null, null, null, date, crew, List.of(), note, by);
    }

    /** Does the skipped work of an earlier visit that a return visit was decided for. */
    public static Scheduling returning(
            VisitId id, VisitId to, LocalDate date, List<UserId> crew, String note, UserId by) {
        return new Scheduling(id, null, to, null, null, date, crew, List.of(), note, by);
    }

    /** Does work without a quote. */
    public static Scheduling of(
            VisitId id,
            CustomerId customer,
            SiteId site,
            LocalDate date,
            List<UserId> crew,
            List<ScheduledLine> lines,
            String note,
            UserId by) {
        return new Scheduling(id, null, null, customer, site, date, crew, lines, note, by);
    }
}
