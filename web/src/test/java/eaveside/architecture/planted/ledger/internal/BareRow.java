package eaveside.architecture.planted.ledger.internal;

import jakarta.persistence.Embeddable;
import java.util.UUID;

/** Planted: a row that holds another thing's id bare. */
@Embeddable
record BareRow(UUID customer) {}
