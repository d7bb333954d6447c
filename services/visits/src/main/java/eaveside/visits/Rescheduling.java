package eaveside.visits;

import eaveside.kernel.Check;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import java.time.LocalDate;
import java.util.Comparator;
import java.util.List;

/**
 * The new day and crew.
 *
 * @param  version of the visit as it was read
 * @param  crew    in any order
 */
public record Rescheduling(VisitId visit, int version, LocalDate date, List<UserId> crew, String reason, UserId by)
        implements VisitEdit {
    public Rescheduling {
        crew = crew.stream().sorted(Comparator.comparing(UserId::value)).toList();
        Check check = new Check();
        VisitRefusal.NoCrew.check(check, crew);
        reason = check.required("reason", reason, 500);
        check.done();
    }
}
