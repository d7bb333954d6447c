package eaveside.invoicing.internal;

import jakarta.persistence.Column;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import java.math.BigDecimal;
import java.util.UUID;

/** A customer's unmatched money; its row is the lock that everything that moves it takes. */
@Entity
@Table(name = "customer_account")
class CustomerAccountRow {
    @Id
    @Column(name = "customer_id")
    UUID customerId;

    BigDecimal credit;

    CustomerAccountRow() {}
}
