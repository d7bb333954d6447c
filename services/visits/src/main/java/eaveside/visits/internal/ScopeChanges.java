package eaveside.visits.internal;

import eaveside.kernel.Decision;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.ScopeChangeType;
import eaveside.visits.SkipReason;
import eaveside.visits.VisitRefusal;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * How a sheet differs from the plan. Every planned line must be accounted for, done and skipped units making up what was
 * planned, so that no planned work falls under the table; work beyond the plan is an extra of its own.
 *
 * @param  done  units done by planned line, in the plan's unit
 * @param  found one difference per skip and per extra, in the sheet's order
 */
@Decision
public record ScopeChanges(Map<VisitLineId, Quantity> done, List<Found> found) {
    public ScopeChanges {
        done = Map.copyOf(done);
        found = List.copyOf(found);
    }

    /** A scope change that the office will decide. */
    public record Found(
            ScopeChangeType type,
            VisitLineId line,
            Quantity quantity,
            @Nullable SkipReason reason) {}

    /** Units done of a planned line, in the plan's unit. */
    public Quantity doneOf(VisitLineId line) {
        Quantity units = done.get(line);
        if (units == null) {
            throw new VisitRefusal.NotOnVisit("line", line.toString());
        }
        return units;
    }

    /** Refuses lines that are unknown, named twice, missing, or not accounted for in full. */
    public static ScopeChanges between(
            Map<VisitLineId, Quantity> planned, List<JobSheet.DoneLine> lines, List<JobSheet.Extra> extras) {
        Map<VisitLineId, Quantity> done = new LinkedHashMap<>();
        List<Found> found = new ArrayList<>();
        Elements.each("lines", lines, (line, i) -> {
            Quantity plan = planned.get(line.line());
            if (plan == null) {
                throw new VisitRefusal.NotOnVisit("line", line.line().toString());
            }
            Quantity units = line.done().in(plan.unit(), "done");
            if (done.put(line.line(), units) != null) {
                throw new KernelRefusal.Twice("line");
            }
            List<Quantity> skips = new ArrayList<>();
            Elements.each("skips", line.skips(), (skip, j) -> {
                skips.add(skip.quantity().in(plan.unit(), "quantity"));
                found.add(new Found(ScopeChangeType.SKIPPED, line.line(), skips.getLast(), skip.reason()));
            });
            Quantity skipped = skips.stream().reduce(Quantity.zero(plan.unit()), Quantity::plus);
            if (!units.plus(skipped).equals(plan)) {
                throw new VisitRefusal.LineNotAccounted(line.line().toString(), plan, units, skipped);
            }
        });
        for (VisitLineId line : planned.keySet()) {
            if (!done.containsKey(line)) {
                throw new VisitRefusal.LineMissing(line.toString());
            }
        }
        Set<VisitLineId> named = new HashSet<>(planned.keySet());
        Elements.each("extras", extras, (extra, i) -> {
            if (!named.add(extra.id())) {
                throw new KernelRefusal.Twice("id");
            }
            found.add(new Found(ScopeChangeType.EXTRA, extra.id(), extra.quantity(), null));
        });
        return new ScopeChanges(done, found);
    }
}
