package eaveside.ledger.internal;

import eaveside.ledger.Account;
import eaveside.ledger.AccountCode;
import eaveside.ledger.AccountRole;
import eaveside.ledger.AccountType;
import eaveside.ledger.CostType;
import eaveside.ledger.Entry;
import eaveside.ledger.LedgerRefusal;
import eaveside.ledger.NewAccount;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/** An account of the chart. */
@Entity
@Table(name = "account")
public class AccountRow {
    @Id
    String code;

    String name;

    @Enumerated(EnumType.STRING)
    AccountType type;

    @Enumerated(EnumType.STRING)
    @Nullable
    AccountRole role;

    @Column(name = "needs_line")
    boolean needsLine;

    @Column(name = "needs_customer")
    boolean needsCustomer;

    @Column(name = "needs_visit")
    boolean needsVisit;

    @Column(name = "needs_cost")
    boolean needsCost;

    @Column(name = "cost_type")
    @Enumerated(EnumType.STRING)
    @Nullable
    CostType costType;

    @Column(name = "variance_code")
    @Nullable
    String varianceCode;

    AccountRow() {}

    public AccountRow(NewAccount account) {
        this.code = account.code().value();
        this.name = account.name();
        this.type = account.type();
    }

    /** Whether it was added as just this. */
    public boolean isSame(NewAccount account) {
        return code.equals(account.code().value())
                && name.equals(account.name())
                && type == account.type()
                && role == null;
    }

    public String code() {
        return code;
    }

    public String name() {
        return name;
    }

    public Optional<AccountRole> role() {
        return Optional.ofNullable(role);
    }

    /** Whether other documents explain the balance, so that a free journal is refused. */
    public boolean isControlled() {
        return role != null && role.isControlled();
    }

    /** Refuses an entry that lacks the service line, customer, visit or type of cost that this account requires. */
    public void requireDimensions(Entry entry) {
        if (needsLine && entry.serviceLine() == null) {
            throw new LedgerRefusal.MissingDimension(name, "service line");
        }
        if (needsCustomer && entry.customer() == null) {
            throw new LedgerRefusal.MissingDimension(name, "customer");
        }
        if (needsVisit && entry.visit() == null) {
            throw new LedgerRefusal.MissingDimension(name, "visit");
        }
        if (needsCost != (entry.costType() != null)) {
            throw new LedgerRefusal.MissingDimension(name, "cost type");
        }
    }

    public Account toAccount() {
        return new Account(
                new AccountCode(code),
                name,
                type,
                !isControlled(),
                varianceCode == null ? null : new AccountCode(varianceCode),
                type != AccountType.EXPENSE ? null : costType == null ? CostType.OVERHEAD : costType,
                role != null && role.isApplied());
    }
}
