/** The queries over what is due; closed to other modules. */
@NullMarked
package eaveside.worklist.internal;

import org.jspecify.annotations.NullMarked;
