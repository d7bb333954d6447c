/** Table of the cost rates and its queries; closed to other modules. */
@NullMarked
package eaveside.costing.internal;

import org.jspecify.annotations.NullMarked;
