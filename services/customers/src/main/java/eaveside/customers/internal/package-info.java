/** Tables of the customers, their queries, and the reading of import files; closed to other modules. */
@NullMarked
package eaveside.customers.internal;

import org.jspecify.annotations.NullMarked;
