/**
 * Consumables on screen: what the company keeps and where, what each location holds, the entries behind it, receipts,
 * transfers, counts and write off.
 */
@NullMarked
package eaveside.web.stock;

import org.jspecify.annotations.NullMarked;
