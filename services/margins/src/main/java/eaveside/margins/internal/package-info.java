/** How the report is put together from sums of entries; closed to other modules. */
@NullMarked
package eaveside.margins.internal;

import org.jspecify.annotations.NullMarked;
