package eaveside.customers.internal;

import eaveside.customers.SurfaceType;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;

/** An attribute's value, with the surface's type beside it so that the database can check that the two go together. */
@Embeddable
record AttributeRow(@Enumerated(EnumType.STRING) SurfaceType type, int value) {}
