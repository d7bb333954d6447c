/** Consumables on screen: what each place holds, the entries behind it, receipts, transfers, counts and scrap. */
@NullMarked
package eaveside.web.stock;

import org.jspecify.annotations.NullMarked;
