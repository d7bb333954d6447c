package eaveside.customers;

import eaveside.kernel.Check;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Default;
import eaveside.kernel.Records;
import eaveside.kernel.Versioned;
import jakarta.persistence.Embeddable;
import jakarta.persistence.EnumType;
import jakarta.persistence.Enumerated;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * Whom the company works for and bills.
 *
 * @param  address        where invoices go
 * @param  email           empty where not known
 * @param  preferredContact null where the customer has not said
 * @param  paymentTermDays days from the invoice's date until it is due, 0 to {@value #LONGEST_TERM_DAYS}
 * @param  active          false once nothing new is done for this customer; what was done stays
 * @param  version         see {@link Versioned}
 */
@Embeddable
public record Customer(
        CustomerId id,
        String name,
        @Enumerated(EnumType.STRING) CustomerType type,
        Address address,
        @Default String email,
        @Default String phone,
        @Enumerated(EnumType.STRING) @Nullable PreferredContact preferredContact,
        int paymentTermDays,
        @Default String note,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public static final int LONGEST_TERM_DAYS = 365;

    public Customer {
        Check check = new Check();
        String typed = email;
        name = check.required("name", name, 200);
        email = check.value(() -> Reach.email(typed), "");
        phone = check.optional("phone", phone, 50);
        note = check.optional("note", note, 2000);
        check.between("paymentTermDays", paymentTermDays, 0, LONGEST_TERM_DAYS);
        check.done();
    }

    /** A new customer of whom no more is known. */
    public static Customer of(CustomerId id, String name, CustomerType type, Address address, int paymentTermDays) {
        return Records.completed(
                Customer.class,
                Map.of("id", id, "name", name, "type", type, "address", address, "paymentTermDays", paymentTermDays));
    }

    /** The same customer, reached otherwise. */
    public Customer reached(String newEmail, String newPhone) {
        return Records.with(Records.with(this, "email", newEmail), "phone", newPhone);
    }

    @Override
    public Customer withVersion(int version) {
        return Records.with(this, "version", version);
    }
}
