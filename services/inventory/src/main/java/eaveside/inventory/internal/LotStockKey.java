package eaveside.inventory.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** A lot in a location. */
@Embeddable
record LotStockKey(
        @Column(name = "lot_id") UUID lotId,
        @Column(name = "location_id") UUID locationId) {}
