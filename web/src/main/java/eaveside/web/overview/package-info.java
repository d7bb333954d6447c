/** The owner's first page: what the company earns, against before, and what changed most. */
@NullMarked
package eaveside.web.overview;

import org.jspecify.annotations.NullMarked;
