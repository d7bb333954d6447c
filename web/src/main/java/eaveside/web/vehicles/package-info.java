/** The vehicles that crews drive: the smallest complete example of a list with its form. */
@NullMarked
package eaveside.web.vehicles;

import org.jspecify.annotations.NullMarked;
