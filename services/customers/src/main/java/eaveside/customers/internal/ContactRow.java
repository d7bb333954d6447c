package eaveside.customers.internal;

import eaveside.customers.Contact;
import eaveside.kernel.ContactId;
import eaveside.kernel.CustomerId;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Id;
import jakarta.persistence.Table;
import jakarta.persistence.Version;
import java.util.UUID;

/** A person to talk to at a customer's. */
@Entity
@Table(name = "contact")
public class ContactRow implements EditableRow<Contact> {
    @Id
    UUID id;

    @Column(name = "customer_id", updatable = false)
    UUID customerId;

    String name;
    String role;
    String email;
    String phone;
    boolean active;

    @Version
    int version;

    @Embedded
    Signature signature;

    ContactRow() {}

    public ContactRow(Contact contact, Signature signature) {
        this.id = contact.id().value();
        this.customerId = contact.customerId().value();
        this.version = 1;
        write(contact, signature);
    }

    @Override
    public final void write(Contact contact, Signature by) {
        this.name = contact.name();
        this.role = contact.role();
        this.email = contact.email();
        this.phone = contact.phone();
        this.active = contact.active();
        this.signature = by;
    }

    @Override
    public Contact content() {
        return new Contact(new ContactId(id), new CustomerId(customerId), name, role, email, phone, active, version);
    }
}
