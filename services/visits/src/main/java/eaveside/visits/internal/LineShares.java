package eaveside.visits.internal;

import eaveside.inventory.Draw;
import eaveside.kernel.Decision;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.visits.VisitRefusal;
import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Whose cost a consumable is: the service line that the technician named, otherwise the lines in proportion to what the
 * units done take of it by standard; where no line takes any, by the standard minutes of what was done, or of what was
 * planned where nothing was.
 */
@Decision
public final class LineShares {
    private final List<WorkLine> work;
    private final List<ServiceLineId> lines;

    /** Refuses a visit without work. */
    public LineShares(List<WorkLine> work) {
        if (work.isEmpty()) {
            throw new KernelRefusal.NoRows("lines");
        }
        this.work = List.copyOf(work);
        this.lines = work.stream().map(WorkLine::serviceLine).distinct().toList();
    }

    /** Refuses a named service line that the visit does not serve. */
    public void requireServed(@Nullable ServiceLineId named) {
        if (named != null && !lines.contains(named)) {
            throw new VisitRefusal.NotOnVisit();
        }
    }

    /** The cost by service line, adding up to it exactly; lines without a share are absent. */
    public Map<ServiceLineId, Money> share(Money cost, Draw draw, @Nullable ServiceLineId named) {
        requireServed(named);
        if (named != null) {
            return Map.of(named, cost);
        }
        List<Money> parts = cost.split(weights(draw));
        Map<ServiceLineId, Money> shares = new LinkedHashMap<>();
        for (int i = 0; i < lines.size(); i++) {
            if (!parts.get(i).isZero()) {
                shares.put(lines.get(i), parts.get(i));
            }
        }
        return shares;
    }

    private List<BigDecimal> weights(Draw draw) {
        List<Function<WorkLine, BigDecimal>> measures = List.of(
                w -> w.standardUseOf(draw.item(), draw.quantity().unit()),
                w -> w.minutesDone().value(),
                w -> w.minutesPlanned().value());
        for (Function<WorkLine, BigDecimal> measure : measures) {
            List<BigDecimal> weights = byLine(measure);
            if (weights.stream().anyMatch(w -> w.signum() > 0)) {
                return weights;
            }
        }
        return byLine(w -> BigDecimal.ONE);
    }

    private List<BigDecimal> byLine(Function<WorkLine, BigDecimal> measure) {
        List<BigDecimal> sums = new ArrayList<>();
        for (ServiceLineId line : lines) {
            sums.add(work.stream()
                    .filter(w -> w.serviceLine().equals(line))
                    .map(measure)
                    .reduce(BigDecimal.ZERO, BigDecimal::add));
        }
        return sums;
    }
}
