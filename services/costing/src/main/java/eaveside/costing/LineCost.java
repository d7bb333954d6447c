package eaveside.costing;

import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;

/** A service line's share of what a visit cost; a part may be zero. */
public record LineCost(ServiceLineId serviceLine, Money labor, Money travel, Money overhead) {
    public Money total() {
        return labor.plus(travel).plus(overhead);
    }
}
