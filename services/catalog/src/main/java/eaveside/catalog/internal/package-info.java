/** Tables of the services and their queries; closed to other modules. */
@NullMarked
package eaveside.catalog.internal;

import org.jspecify.annotations.NullMarked;
