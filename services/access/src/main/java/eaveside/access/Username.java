package eaveside.access;

import java.util.Locale;
import java.util.Optional;
import java.util.regex.Pattern;

/** What a person signs in as, in lower case. */
public record Username(String value) {
    private static final Pattern FORM = Pattern.compile("[a-z0-9][a-z0-9._@-]{1,63}");

    /** Lowers the case and drops surrounding blanks; refuses with {@link AccessRefusal.BadUsername} what cannot be a username. */
    public Username {
        value = normal(value);
        if (!FORM.matcher(value).matches()) {
            throw new AccessRefusal.BadUsername();
        }
    }

    /** The username that was typed; nothing where no user can have it. */
    public static Optional<Username> typed(String text) {
        return FORM.matcher(normal(text)).matches() ? Optional.of(new Username(text)) : Optional.empty();
    }

    /** As typed, in the form that is compared. */
    static String normal(String typed) {
        return typed.strip().toLowerCase(Locale.ROOT);
    }

    @Override
    public String toString() {
        return value;
    }
}
