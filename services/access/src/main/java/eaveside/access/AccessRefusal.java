package eaveside.access;

import eaveside.kernel.Refusal;
import eaveside.kernel.UserId;
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

    /** Failures came before this attempt: the next one counts only from {@link #until()}. Not itself a failure. */
    public static final class TooSoon extends AccessRefusal {
        private static final long serialVersionUID = 1;

        private final Instant until;

        public TooSoon(Instant until, Instant now) {
            super(
                    Type.FORBIDDEN,
                    "After failed attempts the next one has to wait: try again in "
                            + Math.max(1, Duration.between(now, until).toSeconds() + 1) + " seconds");
            this.until = until;
        }

        public Instant until() {
            return until;
        }
    }

    /** So many passwords are being checked that this one cannot be; it does not count as a failure. */
    public static final class Busy extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public Busy() {
            super(Type.CONFLICT, "Too many sign-ins at this moment: try again in a few seconds");
        }
    }

    /** The same answer for a token that is unknown, expired or revoked, and for one of a deactivated user. */
    public static final class BadToken extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadToken() {
            super(Type.FORBIDDEN, "The bearer token is not valid");
        }
    }

    public static final class NoSuchUser extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchUser(String user) {
            super(Type.NOT_FOUND, "There is no user " + user);
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
                    "A username has 2 to 64 letters (a to z), digits, dots, hyphens, underscores or @, and begins with a letter or digit",
                    "username");
        }
    }

    public static final class UsernameTaken extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public UsernameTaken(String username) {
            super(Type.CONFLICT, "The username '" + username + "' is taken", "username");
        }
    }

    public static final class WeakPassword extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public WeakPassword(String why) {
            super(Type.RULE, "The password " + why, "password");
        }
    }

    /** One id, two contents. */
    public static final class IdTaken extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public IdTaken(String id) {
            super(Type.CONFLICT, "The id " + id + " was already used with other content");
        }
    }

    /** Someone else changed the user meanwhile; {@link #current()} is how it stands now. */
    public static final class ChangedMeanwhile extends AccessRefusal {
        private static final long serialVersionUID = 1;

        private final transient User current;

        public ChangedMeanwhile(User current) {
            super(Type.CONFLICT, current.username() + " was changed by someone else meanwhile");
            this.current = current;
        }

        public User current() {
            return current;
        }
    }

    /** Nobody could administer the company any more. */
    public static final class LastOwner extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public LastOwner() {
            super(Type.RULE, "The last active owner can neither be deactivated nor get another role", "role");
        }
    }

    public static final class Deactivated extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public Deactivated(UserId user) {
            super(Type.RULE, "The user " + user + " is deactivated", "user");
        }
    }

    public static final class NoSuchToken extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public NoSuchToken(TokenId token) {
            super(Type.NOT_FOUND, "There is no token " + token);
        }
    }

    /** A token is shown once and not kept: where the answer was lost, revoke it and issue another. */
    public static final class AlreadyShown extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public AlreadyShown(TokenId token) {
            super(
                    Type.CONFLICT,
                    "The token " + token
                            + " was issued and shown before; it cannot be shown again, so revoke it and issue another");
        }
    }

    public static final class BadLifetime extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadLifetime(long longestDays) {
            super(Type.RULE, "A token is valid for 1 to " + longestDays + " days", "days");
        }
    }

    /** A page of the audit log was asked for by a key that the audit log did not give. */
    public static final class BadPageKey extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadPageKey() {
            super(Type.MALFORMED, "The key of the page is not one that this list gave", "after");
        }
    }

    /** An action's name that is not lower-case words with dots and hyphens. */
    public static final class BadAction extends AccessRefusal {
        private static final long serialVersionUID = 1;

        public BadAction() {
            super(
                    Type.MALFORMED,
                    "An action is named by up to 60 lower-case letters, digits, dots and hyphens",
                    "action");
        }
    }
}
