package eaveside.web.sheets;

import eaveside.customers.Surface;
import eaveside.findings.KindCode;
import eaveside.inventory.StockItem;
import eaveside.kernel.OfferingId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.offerings.Offering;
import java.util.Map;
import java.util.Set;

/**
 * What a sheet's fields are read against.
 *
 * @param surfaces of the site
 * @param kinds    of findings in use
 */
record Known(
        Map<OfferingId, Offering> offerings,
        Map<SurfaceId, Surface> surfaces,
        Map<StockItemId, StockItem> items,
        Set<KindCode> kinds,
        Unit volume,
        Unit distance) {
    /** What a skipped unit that is cracked is noted as. */
    static final KindCode CRACKED = new KindCode("CRACKED_GLASS");

    /** What a photo of another skipped unit is noted as. */
    static final KindCode OTHER = new KindCode("OTHER");
}
