package eaveside.architecture.planted.ledger.internal;

/** Public, though no other package uses it. */
public final class SeenByNobody {}
