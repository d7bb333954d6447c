/**
 * Consumables: what the company sprays, filters and wears out, where it lies, and what it cost.
 *
 * <p>Goods come in as lots with their cost ({@link eaveside.inventory.ReceiveGoods}) into a {@link
 * eaveside.inventory.Place}, move between store room and vans at that cost ({@link eaveside.inventory.TransferStock}),
 * and leave oldest lot first: by use on a visit ({@link eaveside.inventory.DrawStock}), as scrap, or as a count
 * difference. The last of a lot to leave a place takes the rest of its value, so that nothing is ever left behind, and
 * nothing goes below zero. Each movement is an entry of the stock ledger, which is append-only like the money ledger and
 * always adds up to what the lots hold and to the inventory account. Soap is counted as concentrate, resin canisters in
 * rated grains, brushes in units of life ({@link eaveside.inventory.Consumption} translates).
 *
 * <p>Every posting takes its locks in one order: the period, the places by id, their lots by id, the number counter.
 * The place's lock is what lets one transaction count first and draw afterwards: no goods can slip in between.
 */
@NullMarked
package eaveside.inventory;

import org.jspecify.annotations.NullMarked;
