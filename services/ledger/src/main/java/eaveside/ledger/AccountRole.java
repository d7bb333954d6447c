package eaveside.ledger;

/** The accounts that the program itself posts to; which code each has is data. */
public enum AccountRole implements AccountRef {
    BANK(false),
    RECEIVABLES(true),
    INVENTORY(true),
    WORK_IN_PROGRESS(true),
    PAYABLES(false),
    GOODS_NOT_INVOICED(false),
    TAX_PAYABLE(false),
    CUSTOMER_CREDIT(true),
    REVENUE(true),
    ROUNDING(true),
    COST_OF_SERVICES(true),
    COUNT_DIFFERENCES(false),
    WRITE_OFFS(false),
    LABOR_APPLIED(true),
    TRAVEL_APPLIED(true),
    OVERHEAD_APPLIED(true),
    NO_CHARGE_GIVEN(true),
    NO_CHARGE_CONTRA(true);

    private final boolean controlled;

    AccountRole(boolean controlled) {
        this.controlled = controlled;
    }

    /** Whether what is absorbed into services is credited here, against what is really spent. */
    public boolean isApplied() {
        return this == LABOR_APPLIED || this == TRAVEL_APPLIED || this == OVERHEAD_APPLIED;
    }

    /**
     * Whether the balance is explained by documents of other modules (open invoices, stock, visits not billed), so that a
     * free journal there would part the two.
     */
    public boolean isControlled() {
        return controlled;
    }
}
