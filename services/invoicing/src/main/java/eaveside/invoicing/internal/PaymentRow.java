package eaveside.invoicing.internal;

import eaveside.invoicing.PaymentMethod;
import eaveside.kernel.CustomerId;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.ledger.Posted;
import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.UUID;
import org.hibernate.annotations.Immutable;
import org.joda.money.CurrencyUnit;

/** A payment received, or paid back (below zero). */
@Entity
@Immutable
@Table(name = "payment")
public class PaymentRow {
    @Id
    UUID id;

    long number;

    @Column(name = "customer_id")
    CustomerId customerId;

    BigDecimal amount;

    @Enumerated(EnumType.STRING)
    PaymentMethod method;

    String reference;

    PaymentRow() {}

    public PaymentRow(Posted posted, CustomerId customer, Money amount, PaymentMethod method, String reference) {
        this.id = posted.id().value();
        this.number = posted.number();
        this.customerId = customer;
        this.amount = amount.amount();
        this.method = method;
        this.reference = reference;
    }

    public DocumentId document() {
        return new DocumentId(id);
    }

    public CustomerId customer() {
        return customerId;
    }

    public Money amount(CurrencyUnit currency) {
        return Money.of(currency, amount.stripTrailingZeros());
    }

    public PaymentMethod method() {
        return method;
    }

    public String reference() {
        return reference;
    }

    public long number() {
        return number;
    }
}
