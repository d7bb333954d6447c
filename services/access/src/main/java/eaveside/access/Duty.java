package eaveside.access;

/** What somebody who is signed in owes before anything else is open to them. */
public enum Duty {
    /** A passkey or a code: the password alone was shown, and the user has set up more. */
    SECOND_FACTOR,
    /** Choosing a password of one's own: somebody else knows the one at hand. */
    NEW_PASSWORD,
    /** Setting up a passkey or an authenticator app, where the role needs one. */
    SET_UP_SECOND_FACTOR
}
