package eaveside.visits;

import eaveside.kernel.CustomerId;
import org.jspecify.annotations.Nullable;

/**
 * What a list asks for.
 *
 * @param  customer whose visits alone; everybody's where it is absent
 * @param  search   beginnings of words that must all occur in the names of customer, site and crew or the site's
 *                  address; accents and capitals do not count; may be empty
 */
public record VisitQuery(VisitsShown show, @Nullable CustomerId customer, String search) {
    public static VisitQuery of(VisitsShown show) {
        return new VisitQuery(show, null, "");
    }

    /** The same where it may be left open what is shown: then what is scheduled, or everything of one customer. */
    public static VisitQuery asked(@Nullable VisitsShown show, @Nullable CustomerId customer, String search) {
        VisitsShown otherwise = customer == null ? VisitsShown.SCHEDULED : VisitsShown.ALL;
        return new VisitQuery(show == null ? otherwise : show, customer, search);
    }
}
