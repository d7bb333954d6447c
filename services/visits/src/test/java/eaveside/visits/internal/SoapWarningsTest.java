package eaveside.visits.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.customers.ManufacturerName;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;
import eaveside.visits.SoapWarning;
import eaveside.visits.internal.SoapWarnings.AlkalineSoap;
import eaveside.visits.internal.SoapWarnings.Sensitive;
import java.util.List;
import org.junit.jupiter.api.Test;

/** Module manufacturers disagree; some forbid alkali altogether (modules’ installation manuals). */
class SoapWarningsTest {
    private static final StockItemId SOAP = StockItemId.next();
    private static final ServiceLineId ARRAYS = ServiceLineId.next();
    private static final ServiceLineId ROOFS = ServiceLineId.next();
    private static final ManufacturerName MANUFACTURER = new ManufacturerName("Brightfield");
    private static final Sensitive ARRAY = new Sensitive(SurfaceId.next(), ARRAYS, MANUFACTURER);

    @Test
    void soap_used_on_any_of_the_work_may_have_met_the_array() {
        assertEquals(
                List.of(new SoapWarning(SOAP, ARRAY.surface(), MANUFACTURER)),
                SoapWarnings.between(
                        List.of(new AlkalineSoap(SOAP, null), new AlkalineSoap(SOAP, null)), List.of(ARRAY, ARRAY)));
    }

    @Test
    void soap_named_for_another_line_did_not() {
        assertEquals(List.of(), SoapWarnings.between(List.of(new AlkalineSoap(SOAP, ROOFS)), List.of(ARRAY)));
        assertEquals(
                1,
                SoapWarnings.between(List.of(new AlkalineSoap(SOAP, ARRAYS)), List.of(ARRAY))
                        .size());
    }
}
