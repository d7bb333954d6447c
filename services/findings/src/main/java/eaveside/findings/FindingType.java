package eaveside.findings;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.Records;
import eaveside.kernel.Versioned;

/**
 * A type of finding, as the company lists them.
 *
 * @param  code    never changes
 * @param  trade   the licensed trade that mends it, such as "electrician"; empty where none is needed
 * @param  caution what the customer is told to keep in mind meanwhile; may be empty
 * @param  active  whether sheets still offer it; findings of a retired type stay as they are
 */
public record FindingType(
        FindingTypeCode code,
        String name,
        @Default String trade,
        @Default String caution,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public FindingType {
        Check check = new Check();
        name = check.required("name", name, 100);
        trade = check.optional("trade", trade, 100);
        caution = check.optional("caution", caution, 1000);
        check.done();
    }

    @Override
    public FindingType withVersion(int other) {
        return Records.with(this, "version", other);
    }
}
