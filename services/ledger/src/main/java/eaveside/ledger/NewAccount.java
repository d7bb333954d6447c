package eaveside.ledger;

import eaveside.kernel.Check;

/** The account to add; it never changes. */
public record NewAccount(AccountCode code, String name, AccountType type) {
    public NewAccount {
        Check check = new Check();
        name = check.required("name", name, 100);
        check.done();
    }
}
