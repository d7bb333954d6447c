package eaveside.inventory.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** An item in a place. */
@Embeddable
public record MinimumKey(
        @Column(name = "item_id") UUID itemId,
        @Column(name = "place_id") UUID placeId) {}
