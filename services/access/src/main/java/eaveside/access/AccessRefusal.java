package eaveside.access;

import eaveside.kernel.Refusal;
import java.time.Duration;
import java.time.Instant;

/** What access refuses. */
public abstract sealed class AccessRefusal extends Refusal {
    private static final long serialVersionUID = 1;

    private AccessRefusal(Type type, String message, String... fields) {
        super(type, message, fields);
    }

    /** The same answer for an unknown username, a wrong password and a deactivated user. */
    public static final class WrongCredentials extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public WrongCredentials() {
            super(Type.FORBIDDEN, "The username or the password is wrong", "username", "password");
        }
    }

    /** The code of an authenticator app that is wrong, too old, or was taken before. */
    public static final class WrongCode extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public WrongCode() {
            super(Type.RULE, "{field} is wrong or was used before. Wait for the next code", "code");
        }
    }

    /** A passkey, or an answer of one, that is not good here. */
    public static final class BadPasskey extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadPasskey(String why) {
            super(Type.RULE, why);
        }
    }

    /** An authenticator app is set up already. */
    public static final class AppSetUp extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public AppSetUp() {
            super(Type.CONFLICT, "An authenticator app is set up already. Remove it first");
        }
    }

    /** Failures came before this attempt: the next one counts only from {@link #until()}. Not itself a failure. */
    public static final class TooSoon extends AccessRefusal {
        private static final long serialVersionUID = 1;

        private final Instant until;
        private final long seconds;

        public TooSoon(Instant until, Instant now) {
            this(until, Math.max(1, Duration.between(now, until).toSeconds() + 1));
        }

        private TooSoon(Instant until, long seconds) {
            super(
                    Type.FORBIDDEN,
                    "Too many failed attempts. Try again in " + (seconds == 1 ? "a second" : seconds + " seconds"));
            this.until = until;
            this.seconds = seconds;
        }

        /** How long to wait, in full seconds. */
        public long seconds() {
            return seconds;
        }

        public Instant until() {
            return until;
        }
    }

    /** So many passwords are being checked that this one cannot be; it does not count as a failure. */
    public static final class Busy extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public Busy() {
            super(Type.CONFLICT, "Too many sign-ins at this moment. Try again in a few seconds");
        }
    }

    /** The same answer for a token that is unknown, expired or revoked, and for one of a deactivated user. */
    public static final class BadToken extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadToken() {
            super(Type.FORBIDDEN, "The bearer token is not valid");
        }
    }

    /** Only an owner is recovered from the command line. */
    public static final class NotAnOwner extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public NotAnOwner(String username) {
            super(Type.RULE, "'" + username + "' is not an owner's username", "username");
        }
    }

    public static final class BadUsername extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadUsername() {
            super(
                    Type.RULE,
                    "{field} takes 2 to 64 letters (a to z), digits, dots, hyphens, underscores or @, and begins with a letter or digit",
                    "username");
        }
    }

    public static final class WeakPassword extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public WeakPassword(String why) {
            super(Type.RULE, "{field} " + why, "password");
        }
    }

    /** Nobody could administer the company any more. */
    public static final class LastOwner extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public LastOwner() {
            super(
                    Type.RULE,
                    "{field} and status of the last active owner cannot change. Make another user an owner first",
                    "role");
        }
    }

    /** A token is shown once and not kept: where the answer was lost, revoke it and issue another. */
    public static final class AlreadyShown extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyShown(TokenId token) {
            super(
                    Type.CONFLICT,
                    "The token " + token + " was shown before and cannot be shown again. Revoke it and issue another");
        }
    }

    /** Whoever finds an open browser of an owner's is not to take that owner's place. */
    public static final class OwnReset extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public OwnReset() {
            super(Type.RULE, "Change your own password and second step on your account, which asks for the password");
        }
    }

    /** A reset that was sent again, or from a page that lay open: what it would replace is gone. */
    public static final class CredentialsChanged extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public CredentialsChanged() {
            super(
                    Type.CONFLICT,
                    "What the user signs in with has changed since this page was opened. Open the user again where a reset is still needed");
        }
    }

    /** An action's name that is not lower-case words with dots and hyphens. */
    public static final class BadAction extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadAction() {
            super(Type.MALFORMED, "{field} takes up to 60 lower-case letters, digits, dots and hyphens", "action");
        }
    }
}
