package eaveside.invoicing.internal;

import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.invoicing.Aging;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceSummary;
import eaveside.invoicing.InvoiceTotals;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.VisitId;
import eaveside.ledger.Posted;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.UUID;
import org.hibernate.annotations.DynamicUpdate;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** An issued invoice; only its open balance and its credit memo are ever written again. */
@Entity
@DynamicUpdate
@Table(name = "invoice")
public class InvoiceRow {
    @Id
    UUID id;

    @Column(updatable = false)
    long number;

    @Column(name = "invoice_date", updatable = false)
    LocalDate date;

    @Column(name = "due_date", updatable = false)
    LocalDate dueDate;

    @Column(name = "service_date", updatable = false)
    LocalDate serviceDate;

    @Column(name = "customer_id", updatable = false)
    CustomerId customerId;

    @Column(name = "customer_name", updatable = false)
    String customerName;

    @Column(updatable = false)
    String street;

    @Column(updatable = false)
    String city;

    @Column(updatable = false)
    String region;

    @Column(name = "zip_code", updatable = false)
    String zipCode;

    @Column(updatable = false)
    String country;

    @Column(name = "visit_id", updatable = false)
    @Nullable
    VisitId visitId;

    @Column(updatable = false)
    String reference;

    @Column(updatable = false)
    String note;

    @Column(name = "line_sum", updatable = false)
    BigDecimal lineSum;

    @Column(updatable = false)
    BigDecimal allowances;

    @Column(updatable = false)
    BigDecimal charges;

    @Column(updatable = false)
    BigDecimal net;

    @Column(updatable = false)
    BigDecimal tax;

    @Column(updatable = false)
    BigDecimal gross;

    @Column(updatable = false)
    BigDecimal prepaid;

    @Column(updatable = false)
    BigDecimal rounding;

    @Column(name = "billed_sheet_id", updatable = false)
    @Nullable
    DocumentId billedSheetId;

    BigDecimal open;

    @Column(name = "credit_memo_id")
    @Nullable
    DocumentId creditMemoId;

    InvoiceRow() {}

    /** @param  billedSheet the visit's, where one is billed */
    public InvoiceRow(Posted posted, InvoiceDraft draft, Customer customer, @Nullable DocumentId billedSheet) {
        this.id = posted.id().value();
        this.number = posted.number();
        this.date = posted.postingDate();
        this.dueDate = posted.postingDate().plusDays(customer.paymentTermDays());
        this.serviceDate = draft.content().serviceDate();
        this.customerId = customer.id();
        this.customerName = customer.name();
        Address address = customer.address();
        this.street = address.street();
        this.city = address.city();
        this.region = address.region();
        this.zipCode = address.zipCode();
        this.country = address.country();
        VisitId visit = draft.visit();
        this.visitId = visit;
        this.reference = draft.content().reference();
        this.note = draft.content().note();
        InvoiceTotals totals = draft.totals();
        this.lineSum = totals.lineSum().amount();
        this.allowances = totals.allowances().amount();
        this.charges = totals.charges().amount();
        this.net = totals.net().amount();
        this.tax = totals.tax().amount();
        this.gross = totals.gross().amount();
        this.prepaid = totals.prepaid().amount();
        this.rounding = totals.rounding().amount();
        this.billedSheetId = billedSheet;
        this.open = totals.due().amount();
    }

    public InvoiceId id() {
        return new InvoiceId(id);
    }

    public CustomerId customer() {
        return customerId;
    }

    public @Nullable VisitId visit() {
        return visitId;
    }

    public LocalDate date() {
        return date;
    }

    /** Such as "invoice 12", for messages. */
    public String label() {
        return "invoice " + number;
    }

    public boolean isCredited() {
        return creditMemoId != null;
    }

    public @Nullable DocumentId creditMemo() {
        return creditMemoId;
    }

    public Money open(CurrencyUnit currency) {
        return Money.of(currency, open.stripTrailingZeros());
    }

    public Money prepaid(CurrencyUnit currency) {
        return Money.of(currency, prepaid.stripTrailingZeros());
    }

    /** On a credited invoice nothing is open, whatever money passes through it. */
    void settle(Money amount) {
        if (!isCredited()) {
            open = open.subtract(amount.amount());
        }
    }

    /** Nothing is owed any more: the credit memo takes back all that was still open. */
    public void creditedBy(DocumentId note) {
        open = BigDecimal.ZERO;
        creditMemoId = note;
    }

    /** Whether something is open that was due by the day. */
    public boolean isOutstanding(LocalDate dueUntil) {
        return open.signum() > 0 && !dueDate.isAfter(dueUntil);
    }

    public InvoiceSummary toRow(CurrencyUnit currency, LocalDate today) {
        boolean due = open.signum() > 0;
        return new InvoiceSummary(
                id(),
                number,
                date,
                dueDate,
                customer(),
                customerName,
                Money.of(currency, gross.stripTrailingZeros()),
                open(currency),
                isCredited(),
                due ? Aging.Bucket.of(dueDate, today) : null,
                due ? Aging.daysPastDue(dueDate, today) : 0);
    }
}
