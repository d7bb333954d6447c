package eaveside.pricing;

import eaveside.kernel.PriceBookId;

/**
 * A price book that is still being written; nothing is priced from it.
 *
 * @param  version to send back with the next change, so that two people cannot overwrite one another
 */
public record PriceBookDraft(PriceBookId id, int version, PriceList list) {}
