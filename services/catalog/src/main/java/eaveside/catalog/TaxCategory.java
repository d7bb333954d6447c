package eaveside.catalog;

/**
 * Categories of tax that invoices name, by their codes in UNCL 5305. Which rate and reason go with a category follows
 * the business rules of EN 16931 (groups BR-S, BR-Z, BR-E, BR-AE, BR-IC, BR-G and BR-O; from memory).
 */
public enum TaxCategory {
    /** Standard rate: the only category with a rate above zero. */
    S(true, false),
    /** Zero rated. */
    Z(false, false),
    /** Exempt from tax. */
    E(false, true),
    /** Services outside the scope of tax. */
    O(false, true),
    /** Reverse charge. */
    AE(false, true),
    /** Free export item, tax not charged. */
    G(false, true),
    /** Exempt supply within the European Economic Area. */
    K(false, true);

    private final boolean hasRate;
    private final boolean needsReason;

    TaxCategory(boolean hasRate, boolean needsReason) {
        this.hasRate = hasRate;
        this.needsReason = needsReason;
    }

    /** Whether its rate lies above zero; it is zero otherwise. */
    public boolean hasRate() {
        return hasRate;
    }

    /** Whether an invoice must say why no tax is charged; it must not otherwise. */
    public boolean needsReason() {
        return needsReason;
    }
}
