package eaveside.pricing.internal;

import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.persistence.LockModeType;

/** The gapless number series of pricing. */
@Shared
public class Numbers {
    private final EntityManager entities;

    @Inject
    public Numbers(EntityManager entities) {
        this.entities = entities;
    }

    /** Locks the series until the commit, so that a draw after it follows on what others have committed. */
    public void lock(PricingSeries series) {
        entities.find(PricingSeriesRow.class, series, LockModeType.PESSIMISTIC_WRITE);
    }

    /** The next number; its counter stays locked until the commit, so that no number is ever lost. */
    public long draw(PricingSeries series) {
        return entities.find(PricingSeriesRow.class, series, LockModeType.PESSIMISTIC_WRITE)
                .draw();
    }
}
