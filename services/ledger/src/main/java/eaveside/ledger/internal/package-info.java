/** Tables of the books and their queries; closed to other modules. */
@NullMarked
package eaveside.ledger.internal;

import org.jspecify.annotations.NullMarked;
