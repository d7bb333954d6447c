/**
 * Stock on screen: items, locations and mixes, what each location holds, the entries behind it, receipts, transfers,
 * physical counts and write-offs.
 */
@NullMarked
package eaveside.web.stock;

import org.jspecify.annotations.NullMarked;
