package eaveside.costing;

import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;

/** Costs a visit's labor, travel and overhead at the rates of its day and shares them over its service lines. */
@Shared
public class ApplyVisitCost {
    private final ReadCostRates readCostRates;

    @Inject
    public ApplyVisitCost(ReadCostRates readCostRates) {
        this.readCostRates = readCostRates;
    }

    /**
     * Nothing is stored: the caller posts the shares. Several works under one service line are added up.
     *
     * @param  on      the day of service
     * @param  done    standard minutes of what was done, extras too
     * @param  planned standard minutes of what was planned; weighs the shares only where nothing was done
     * @return one share for each service line of the work that it was shared by; a share may be zero
     */
    @Transactional
    public AppliedCost apply(LocalDate on, Effort effort, List<LineWork> done, List<LineWork> planned) {
        return VisitCost.of(readCostRates.on(on), effort, done, planned);
    }
}
