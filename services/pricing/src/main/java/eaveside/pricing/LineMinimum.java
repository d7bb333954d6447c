package eaveside.pricing;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;

/** The least that all work of one service line on a visit costs together; above zero. */
public record LineMinimum(ServiceLineId serviceLine, Money amount) {
    public LineMinimum {
        if (!amount.isPositive()) {
            throw new KernelRefusal.NotPositive("amount");
        }
    }
}
