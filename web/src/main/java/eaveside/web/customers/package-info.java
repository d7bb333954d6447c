/** Customers, their sites and surfaces on screen. */
@NullMarked
package eaveside.web.customers;

import org.jspecify.annotations.NullMarked;
