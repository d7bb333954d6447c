/** Tables of users, tokens, failures and the audit log, password hashes and delays; closed to other modules. */
@NullMarked
package eaveside.access.internal;

import org.jspecify.annotations.NullMarked;
