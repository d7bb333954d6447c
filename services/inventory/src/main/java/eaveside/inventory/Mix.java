package eaveside.inventory;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.MixId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Versioned;
import jakarta.persistence.Embeddable;

/**
 * What crews mix: a visit uses mix, the books use the concentrate in it.
 *
 * @param  active whether job sheets offer it
 */
@Embeddable
public record Mix(
        MixId id,
        String name,
        StockItemId concentrate,
        MixRatio ratio,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public Mix {
        Check check = new Check();
        name = check.required("name", name, 100);
        check.done();
    }

    public static Mix of(MixId id, String name, StockItemId concentrate, MixRatio ratio) {
        return new Mix(id, name, concentrate, ratio, true, 0);
    }
}
