package eaveside.access;

/** What somebody who is signed in owes before anything else is open to them. */
public enum Duty {
    /** Choosing a password of one's own: somebody else knows the one at hand. */
    NEW_PASSWORD
}
