package eaveside.ledger.internal;

import eaveside.kernel.CustomerId;
import eaveside.kernel.FindingId;
import eaveside.kernel.Money;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountCode;
import eaveside.ledger.CostType;
import eaveside.ledger.Entry;
import jakarta.persistence.Column;
import jakarta.persistence.EmbeddedId;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** One entry of the money ledger. */
@Entity
@Immutable
@Table(name = "money_entry")
public class EntryRow {
    @EmbeddedId
    EntryKey key;

    @Column(name = "posting_date")
    LocalDate postingDate;

    @Column(name = "account_code")
    String accountCode;

    @Column(name = "needs_line")
    boolean needsLine;

    @Column(name = "needs_customer")
    boolean needsCustomer;

    @Column(name = "needs_visit")
    boolean needsVisit;

    @Column(name = "needs_cost")
    boolean needsCost;

    BigDecimal amount;

    @Column(name = "service_line_id")
    @Nullable
    ServiceLineId serviceLineId;

    @Column(name = "visit_id")
    @Nullable
    VisitId visitId;

    @Column(name = "customer_id")
    @Nullable
    CustomerId customerId;

    @Column(name = "cost_type")
    @Enumerated(EnumType.STRING)
    @Nullable
    CostType costType;

    @Column(name = "finding_id")
    @Nullable
    FindingId findingId;

    String note;

    EntryRow() {}

    public EntryRow(DocumentRow document, int line, AccountRow account, Entry entry) {
        this.key = new EntryKey(document.id, line);
        this.postingDate = document.postingDate;
        this.accountCode = account.code;
        this.needsLine = account.needsLine;
        this.needsCustomer = account.needsCustomer;
        this.needsVisit = account.needsVisit;
        this.needsCost = account.needsCost;
        this.amount = entry.amount().amount();
        this.serviceLineId = entry.serviceLine();
        this.visitId = entry.visit();
        this.customerId = entry.customer();
        this.costType = entry.costType();
        this.findingId = entry.finding();
        this.note = entry.note();
    }

    public Entry toEntry(CurrencyUnit currency) {
        return new Entry(
                new AccountCode(accountCode),
                Money.of(currency, amount.stripTrailingZeros()),
                serviceLineId,
                visitId,
                customerId,
                costType,
                findingId,
                note);
    }
}
