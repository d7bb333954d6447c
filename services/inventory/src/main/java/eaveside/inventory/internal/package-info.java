/** Tables of the inventory and their queries; closed to other modules. */
@NullMarked
package eaveside.inventory.internal;

import org.jspecify.annotations.NullMarked;
