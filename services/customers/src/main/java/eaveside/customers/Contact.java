package eaveside.customers;

import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Texts;

/**
 * A person to talk to at a customer's.
 *
 * @param role    such as caretaker or accounts; may be empty
 * @param version see {@link Editable}
 */
public record Contact(
        ContactId id,
        CustomerId customerId,
        String name,
        String role,
        String email,
        String phone,
        boolean active,
        int version)
        implements Editable {
    public Contact {
        name = Texts.required("name", name, 200);
        role = Texts.optional("role", role, 100);
        email = Reach.email(email);
        phone = Texts.optional("phone", phone, 50);
    }

    Contact ofCustomer(CustomerId customer) {
        return new Contact(id, customer, name, role, email, phone, active, version);
    }

    @Override
    public Contact withVersion(int version) {
        return new Contact(id, customerId, name, role, email, phone, active, version);
    }
}
