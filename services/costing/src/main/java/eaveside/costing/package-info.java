/**
 * What a visit costs the company beside its consumables: labor, travel and a share of overhead, applied from the
 * crew's labor minutes and the distance driven at the owner's dated rates, and shared over the service lines that the
 * visit served.
 *
 * <p>What was applied and what was really spent meet when a period closes (see the ledger); a rate is never changed in
 * hindsight, a new dated one is set ({@link eaveside.costing.SetCostRates}).
 */
@NullMarked
package eaveside.costing;

import org.jspecify.annotations.NullMarked;
