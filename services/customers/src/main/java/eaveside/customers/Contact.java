package eaveside.customers;

import eaveside.kernel.Check;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Default;
import eaveside.kernel.Records;
import eaveside.kernel.Versioned;
import jakarta.persistence.Column;
import jakarta.persistence.Embeddable;

/**
 * A person to talk to at a customer's.
 *
 * @param  role    such as caretaker or accounts; may be empty
 * @param  version see {@link Versioned}
 */
@Embeddable
public record Contact(
        ContactId id,
        @Column(name = "customer_id", updatable = false) CustomerId customer,
        String name,
        @Default String role,
        @Default String email,
        @Default String phone,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public Contact {
        Check check = new Check();
        String typed = email;
        name = check.required("name", name, 200);
        role = check.optional("role", role, 100);
        email = check.value(() -> Reach.email(typed), "");
        phone = check.optional("phone", phone, 50);
        check.done();
    }

    Contact ofCustomer(CustomerId customer) {
        return Records.with(this, "customer", customer);
    }

    @Override
    public Contact withVersion(int version) {
        return Records.with(this, "version", version);
    }
}
