package eaveside.ledger;

/** What a cost of a visit is made of; kept on every entry of work in progress and cost of services. */
public enum CostType {
    LABOR,
    CONSUMABLES,
    TRAVEL,
    OVERHEAD
}
