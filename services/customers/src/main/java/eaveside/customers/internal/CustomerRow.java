package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.kernel.CustomerId;
import eaveside.kernel.EditedRow;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;
import org.jspecify.annotations.Nullable;

/** A customer. */
@Entity
@Table(name = "customer")
public class CustomerRow extends EditedRow<Customer> {
    @Embedded
    @AttributeOverride(name = "id", column = @Column(name = "id", insertable = false, updatable = false))
    @AttributeOverride(name = "version", column = @Column(name = "version", insertable = false, updatable = false))
    Customer customer;

    /** Written by {@link eaveside.customers.MergeCustomers} alone. */
    @Column(name = "merged_into", insertable = false, updatable = false)
    @Nullable
    CustomerId mergedInto;

    /** The customer that this one was merged into; itself where it was not. */
    public CustomerId kept() {
        return mergedInto == null ? customer.id() : mergedInto;
    }

    @Override
    protected Customer stored() {
        return customer;
    }

    @Override
    protected void store(Customer content) {
        customer = content;
    }
}
