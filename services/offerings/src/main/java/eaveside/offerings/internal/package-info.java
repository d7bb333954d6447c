/** Tables of the offerings and their queries; closed to other modules. */
@NullMarked
package eaveside.offerings.internal;

import org.jspecify.annotations.NullMarked;
