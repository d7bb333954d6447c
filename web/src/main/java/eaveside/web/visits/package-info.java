/** Visits for the office: the list, scheduling, rescheduling, the signed job sheet against the plan, and its scope changes. */
@NullMarked
package eaveside.web.visits;

import org.jspecify.annotations.NullMarked;
