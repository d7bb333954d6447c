/** Visits at the desk: planning, moving, the signed sheet, and what each difference from the plan leads to. */
@NullMarked
package eaveside.web.visits;

import org.jspecify.annotations.NullMarked;
