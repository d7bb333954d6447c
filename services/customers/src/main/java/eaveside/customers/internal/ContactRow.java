package eaveside.customers.internal;

import eaveside.customers.Contact;
import eaveside.kernel.EditedRow;
import jakarta.persistence.AttributeOverride;
import jakarta.persistence.Column;
import jakarta.persistence.Embedded;
import jakarta.persistence.Entity;
import jakarta.persistence.Table;

/** A person to talk to at a customer's. */
@Entity
@Table(name = "contact")
public class ContactRow extends EditedRow<Contact> {
    @Embedded
    @AttributeOverride(name = "id", column = @Column(name = "id", insertable = false, updatable = false))
    @AttributeOverride(name = "version", column = @Column(name = "version", insertable = false, updatable = false))
    Contact contact;

    @Override
    protected Contact stored() {
        return contact;
    }

    @Override
    protected void store(Contact content) {
        contact = content;
    }
}
