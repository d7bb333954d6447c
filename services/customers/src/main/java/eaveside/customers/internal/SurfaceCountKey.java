package eaveside.customers.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;
import java.util.UUID;

/** The how-manieth count of a surface. */
@Embeddable
record SurfaceCountKey(@Column(name = "surface_id") UUID surfaceId, int entry) {}
