package eaveside.kernel;

import java.util.List;
import java.util.Locale;

/**
 * A named "no". Every module has one sealed family of these; each is mapped once, by its {@link Kind}, to an answer
 * (problem JSON for scripts, a page with the fields marked for people). Unchecked, so that the transaction of the
 * use case rolls back and nothing is left half-written.
 */
public abstract class Refusal extends RuntimeException {
    private static final long serialVersionUID = 1;

    /** What sort of no it is, with the HTTP status that says the same. */
    public enum Kind {
        MALFORMED(400),
        FORBIDDEN(403),
        NOT_FOUND(404),
        CONFLICT(409),
        RULE(422);

        private final int status;

        Kind(int status) {
            this.status = status;
        }

        public int status() {
            return status;
        }
    }

    private final Kind kind;
    private final transient List<String> fields;

    /**
     * @param message plain English, for the person who can mend it; no stack, no SQL
     * @param fields  the names of the inputs concerned, as the caller named them; may be empty
     */
    protected Refusal(Kind kind, String message, String... fields) {
        super(message, null, false, true);
        this.kind = kind;
        this.fields = List.of(fields);
    }

    public Kind kind() {
        return kind;
    }

    public List<String> fields() {
        return fields == null ? List.of() : fields;
    }

    /** The message; never absent on a refusal. */
    public String text() {
        return String.valueOf(getMessage());
    }

    /** A stable name for scripts and message bundles, from the class: {@code VisitRefusal.AlreadyDone} is {@code visit.already-done}. */
    public String code() {
        Class<?> outer = getClass().getEnclosingClass();
        String family = outer == null ? "" : dashed(outer.getSimpleName().replace("Refusal", "")) + ".";
        return family + dashed(getClass().getSimpleName());
    }

    private static String dashed(String camel) {
        return camel.replaceAll("(?<=[a-z0-9])(?=[A-Z])", "-").toLowerCase(Locale.ROOT);
    }
}
