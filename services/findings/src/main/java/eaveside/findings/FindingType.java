package eaveside.findings;

import eaveside.kernel.Texts;

/**
 * A type of finding, as the company lists them.
 *
 * @param  trade   the licensed trade that mends it, such as "electrician"; empty where none is needed
 * @param  caution what the customer is told to keep in mind meanwhile; may be empty
 * @param  active  whether sheets still offer it; findings of a retired type stay as they are
 * @param  version what the editor saw, 0 for a new type
 */
public record FindingType(
        FindingTypeCode code, String name, String trade, String caution, boolean active, int version) {
    public FindingType {
        name = Texts.required("name", name, 100);
        trade = Texts.optional("trade", trade, 100);
        caution = Texts.optional("caution", caution, 1000);
    }
}
