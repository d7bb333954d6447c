/**
 * What each service line earns: reads the ledger, writes nothing. Every figure carries the filter of the entries that it
 * is the sum of ({@link eaveside.margins.Figure}), and the report's result equals the ledger's to the cent
 * ({@link eaveside.margins.ReadMargins}).
 */
@NullMarked
package eaveside.margins;

import org.jspecify.annotations.NullMarked;
