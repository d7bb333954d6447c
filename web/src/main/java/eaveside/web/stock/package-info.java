/**
 * Consumables on screen: what the company keeps and where, what each place holds, the entries behind it, receipts,
 * transfers, counts and scrap.
 */
@NullMarked
package eaveside.web.stock;

import org.jspecify.annotations.NullMarked;
