package eaveside.ledger;

/** A code of the chart of accounts: four digits. */
public record AccountCode(String value) implements AccountRef {
    public AccountCode {
        if (!value.matches("[0-9]{4}")) {
            throw new LedgerRefusal.NoSuchAccount(value);
        }
    }

    @Override
    public String toString() {
        return value;
    }
}
