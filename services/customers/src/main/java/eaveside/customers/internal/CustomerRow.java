package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.kernel.CustomerId;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/** A customer. */
@Entity
@Table(name = "customer")
public class CustomerRow implements EditableRow<Customer> {
    @Id
    UUID id;

    String name;

    @Enumerated(EnumType.STRING)
    CustomerType type;

    @Embedded
    AddressRow address;

    String email;
    String phone;

    @Column(name = "payment_term_days")
    short paymentTermDays;

    String note;
    boolean active;

    /** Written by {@link eaveside.customers.MergeCustomers} alone. */
    @Column(name = "merged_into", insertable = false, updatable = false)
    @Nullable
    UUID mergedInto;

    @Version
    int version;

    @Embedded
    Signature signature;

    CustomerRow() {}

    public CustomerRow(Customer customer, Signature signature) {
        this.id = customer.id().value();
        this.version = 1;
        write(customer, signature);
    }

    @Override
    public final void write(Customer customer, Signature by) {
        this.name = customer.name();
        this.type = customer.type();
        this.address = AddressRow.of(customer.address());
        this.email = customer.email();
        this.phone = customer.phone();
        this.paymentTermDays = (short) customer.paymentTermDays();
        this.note = customer.note();
        this.active = customer.active();
        this.signature = by;
    }

    /** The customer that this one was merged into; itself where it was not. */
    public CustomerId kept() {
        return new CustomerId(mergedInto == null ? id : mergedInto);
    }

    @Override
    public Customer content() {
        return new Customer(
                new CustomerId(id),
                name,
                type,
                address.toAddress(),
                email,
                phone,
                paymentTermDays,
                note,
                active,
                version);
    }
}
