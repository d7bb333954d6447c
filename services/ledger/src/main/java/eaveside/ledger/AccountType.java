package eaveside.ledger;

/** What an account is, in the usual division; memorandum accounts lie outside profit and balance among themselves. */
public enum AccountType {
    ASSET,
    LIABILITY,
    EQUITY,
    REVENUE,
    EXPENSE,
    MEMORANDUM
}
