package eaveside.web.sheets;

import eaveside.catalog.ServiceItem;
import eaveside.customers.Surface;
import eaveside.findings.FindingTypeCode;
import eaveside.inventory.StockItem;
import eaveside.kernel.Unit;
import java.util.Map;
import java.util.Set;

/**
 * What a sheet's fields are read against, by id as the page sends it.
 *
 * @param  surfaces of the site
 * @param  types    of findings in use
 * @param  volume   the unit that water and mixes are entered in
 */
record Known(
        Map<String, ServiceItem> serviceItems,
        Map<String, Surface> surfaces,
        Map<String, StockItem> items,
        Set<FindingTypeCode> types,
        Unit volume,
        Unit distance) {
    /** What a skipped unit that is cracked is noted as. */
    static final FindingTypeCode CRACKED = new FindingTypeCode("CRACKED_GLASS");

    /** What a photo of another skipped unit is noted as. */
    static final FindingTypeCode OTHER = new FindingTypeCode("OTHER");
}
