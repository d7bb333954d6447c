package eaveside.customers;

import eaveside.kernel.CustomerId;
import eaveside.kernel.Texts;

/**
 * Whom the company works for and bills.
 *
 * @param email           empty where not known
 * @param paymentTermDays days from the invoice's date until it is due, 0 to {@value #LONGEST_TERM_DAYS}
 * @param active          false once nothing new is done for this customer; what was done stays
 * @param version         see {@link Editable}
 */
public record Customer(
        CustomerId id,
        String name,
        CustomerKind kind,
        Address billingAddress,
        String email,
        String phone,
        int paymentTermDays,
        String note,
        boolean active,
        int version)
        implements Editable {
    public static final int LONGEST_TERM_DAYS = 365;

    public Customer {
        name = Texts.required("name", name, 200);
        email = Reach.email(email);
        phone = Texts.optional("phone", phone, 50);
        note = Texts.optional("note", note, 2000);
        if (paymentTermDays < 0 || paymentTermDays > LONGEST_TERM_DAYS) {
            throw new CustomersRefusal.OutOfRange("paymentTermDays", paymentTermDays, 0, LONGEST_TERM_DAYS);
        }
    }

    @Override
    public Customer withVersion(int version) {
        return new Customer(id, name, kind, billingAddress, email, phone, paymentTermDays, note, active, version);
    }
}
