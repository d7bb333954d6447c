/** Visits for the office: the list, booking, moving, the signed sheet against the plan, and what becomes of the difference. */
@NullMarked
package eaveside.web.visits;

import org.jspecify.annotations.NullMarked;
