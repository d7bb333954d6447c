/**
 * Stock: what the company sprays, filters and wears out, where it lies, and what it cost.
 *
 * <p>Goods come in as lots with their cost ({@link eaveside.inventory.ReceiveGoods}) into a {@link
 * eaveside.inventory.Location}, move between store room and vans at that cost ({@link eaveside.inventory.TransferStock}),
 * and leave oldest lot first: by use on a visit ({@link eaveside.inventory.DrawStock}), as write-off, or as a count
 * difference. The last of a lot to leave a location takes the rest of its value, so that nothing is ever left behind, and
 * nothing goes below zero. Each movement is an entry of the stock ledger, which is append-only like the money ledger and
 * always adds up to what the lots hold and to the inventory account. Soap is counted as concentrate, resin canisters in
 * rated grains, brushes in units of life ({@link eaveside.inventory.Consumption} translates).
 *
 * <p>Every posting takes its locks in one order: the period, the locations by id, their lots by id, the number counter.
 * The location's lock is what lets one transaction count first and draw afterwards: no goods can slip in between.
 */
@NullMarked
package eaveside.inventory;

import org.jspecify.annotations.NullMarked;
