/**
 * Who may come in, and who did what.
 *
 * <p>A person signs in with a username and a password ({@link eaveside.access.SignIn}); a script with a bearer token of a
 * person ({@link eaveside.access.AuthenticateToken}). Passwords are kept as Argon2id hashes that carry their own cost,
 * and are hashed anew at the next sign-in once the cost has been raised. Failed attempts make the next one wait, longer
 * each time, per username and per network address; the waits are stored and so outlive a restart. Every password check
 * counts as a failure until it has succeeded, so that many at once win nothing. {@link eaveside.access.RecordAudit}
 * keeps the audit log: what was done joins the transaction of the deed, what was refused is kept though the deed rolled
 * back. Which role may do what is decided where the request comes in; what each
 * may see, costs and books above all, {@link eaveside.access.Sight} says.
 */
@NullMarked
package eaveside.access;

import org.jspecify.annotations.NullMarked;
