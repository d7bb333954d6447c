package eaveside.inventory.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** An item in a location. */
@Embeddable
public record ReorderPointKey(
        @Column(name = "item_id") UUID itemId,
        @Column(name = "location_id") UUID locationId) {}
