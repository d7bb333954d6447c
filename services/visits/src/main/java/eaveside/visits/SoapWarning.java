package eaveside.visits;

import eaveside.customers.ManufacturerName;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;

/**
 * An alkaline soap is planned or was used on modules whose manufacturer forbids alkali. A warning, not a refusal: what was done
 * must be told truly, and the manufacturer's manual and the crew's judgment come first.
 */
public record SoapWarning(StockItemId soap, SurfaceId surface, ManufacturerName manufacturer) {}
