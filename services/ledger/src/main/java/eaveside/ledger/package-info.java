/**
 * The money ledger: double entry, append-only, in the company's one currency.
 *
 * <p>A document posts once: {@link eaveside.ledger.PostDocument} takes the period's lock, then (after the caller has
 * locked its lots) draws the next number of the document's series and inserts the document with its entries. Nothing
 * posted ever changes; a mistake is reversed in full by its own document ({@link eaveside.ledger.ReverseDocument}) and
 * entered again. Closing a month keeps what was applied and what was really spent beside the ledger and moves nothing
 * ({@link eaveside.ledger.ReadVariances}). Every figure that the program shows is a sum of entries, and opens down to them
 * ({@link eaveside.ledger.ReadLedger}).
 */
@NullMarked
package eaveside.ledger;

import org.jspecify.annotations.NullMarked;
