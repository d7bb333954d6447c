package eaveside.customers;

import eaveside.kernel.Decision;
import eaveside.kernel.Texts;
import java.util.regex.Pattern;

/** How somebody is reached. */
@Decision
final class Reach {
    private static final Pattern EMAIL = Pattern.compile("[^@\\s]+@[^@\\s]+");

    private Reach() {}

    /** Empty, or something with one @ and no blanks: only sending can tell more. */
    static String email(String text) {
        String email = Texts.optional("email", text, 200);
        if (!email.isEmpty() && !EMAIL.matcher(email).matches()) {
            throw new CustomersRefusal.NotAnEmail(email);
        }
        return email;
    }
}
