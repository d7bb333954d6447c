/**
 * What every module speaks: money, quantities with their units, typed ids, named refusals and pages of results.
 * The kernel has no domain of its own: nothing here knows what a visit or an invoice is beyond its id.
 */
@NullMarked
package eaveside.kernel;

import org.jspecify.annotations.NullMarked;
