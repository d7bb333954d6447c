package eaveside.ledger;

import eaveside.kernel.KernelRefusal;

/** A code of the chart of accounts: four digits. */
public record AccountCode(String value) implements AccountRef {
    public AccountCode {
        if (!value.matches("[0-9]{4}")) {
            throw new KernelRefusal.Unfit("account", "{field} must be four digits, such as 6300");
        }
    }

    @Override
    public String toString() {
        return value;
    }
}
