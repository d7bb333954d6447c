package eaveside.web.security;

import eaveside.access.TokenScope;
import eaveside.kernel.Refusal;
import java.util.List;
import java.util.Locale;

/** What the web application itself refuses, before any use case is asked. */
public abstract sealed class WebRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private WebRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    public static final class NotForYourRole extends WebRefusal {
        private static final long serialVersionUID = 1;

        public NotForYourRole() {
            super(Type.FORBIDDEN, "This is not open to your role; the attempt has been noted");
        }
    }

    /** Answered with 401. */
    public static final class SignInFirst extends WebRefusal {
        private static final long serialVersionUID = 1;

        public SignInFirst() {
            super(Type.FORBIDDEN, "Sign in first");
        }
    }

    /** A token that was issued for less than it is used for. */
    public static final class NotInScope extends WebRefusal {
        private static final long serialVersionUID = 1;

        public NotInScope(TokenScope scope) {
            super(Type.FORBIDDEN, "This token is good to " + scope.name().toLowerCase(Locale.ROOT) + " only");
        }
    }

    /** What somebody else knows of one's way in has to be replaced before anything else is open. */
    public static final class DutyFirst extends WebRefusal {
        private static final long serialVersionUID = 1;

        public DutyFirst(String place) {
            super(Type.FORBIDDEN, "Something is to be done first, at " + place);
        }
    }

    /** A form that did not come from one of our own pages. */
    public static final class FromElsewhere extends WebRefusal {
        private static final long serialVersionUID = 1;

        public FromElsewhere() {
            super(Type.FORBIDDEN, "The request did not come from a page of this application");
        }
    }

    /** A body that cannot be read as what it says it is. */
    public static final class Unreadable extends WebRefusal {
        private static final long serialVersionUID = 1;

        public Unreadable(String what) {
            super(Type.MALFORMED, what);
        }
    }

    public static final class TooManyFields extends WebRefusal {
        private static final long serialVersionUID = 1;

        public TooManyFields(int most) {
            super(Type.MALFORMED, "A form has at most " + most + " fields");
        }
    }

    public static final class TooManyRows extends WebRefusal {
        private static final long serialVersionUID = 1;

        public TooManyRows(int most) {
            super(Type.MALFORMED, "A form has at most " + most + " rows of a kind");
        }
    }

    public static final class NoSuchPage extends WebRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchPage() {
            super(Type.NOT_FOUND, "There is nothing at this address");
        }
    }

    /** A refusal of a part of a body, told with the path of that part. */
    public static final class Within extends WebRefusal {
        private static final long serialVersionUID = 1;

        private final String code;

        public Within(Type type, String code, String field, String message) {
            this(type, code, field.isEmpty() ? List.of() : List.of(field), message);
        }

        public Within(Type type, String code, List<String> fields, String message) {
            super(type, message, fields.toArray(String[]::new));
            this.code = code;
        }

        @Override
        public String code() {
            return code;
        }
    }
}
