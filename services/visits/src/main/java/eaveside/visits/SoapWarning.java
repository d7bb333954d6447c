package eaveside.visits;

import eaveside.customers.MakerName;
import eaveside.kernel.StockItemId;
import eaveside.kernel.SurfaceId;

/**
 * An alkaline soap is planned or was used on modules whose maker forbids alkali. A warning, not a refusal: what was done
 * must be told truly, and the maker's manual and the crew's judgement come first.
 */
public record SoapWarning(StockItemId soap, SurfaceId surface, MakerName maker) {}
