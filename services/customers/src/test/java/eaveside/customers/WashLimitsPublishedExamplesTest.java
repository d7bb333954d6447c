package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.array;
import static eaveside.customers.CustomersFixture.savedSite;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.testing.Bench;
import java.util.List;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class WashLimitsPublishedExamplesTest {
    @RegisterExtension
    static final Bench bench = new Bench();

    /**
     * From memory of installation manuals of three makers, not named here, who disagree: water hardness below 75 mg/L,
     * pressure to 35 bar (3,500 kPa) and water within 20 °C of the glass; pressure to 700 kPa and no alkali; pressure to 4
     * MPa (4,000 kPa) and a near-neutral pH, which an alkaline soap is not. "Below 75" is entered as at most 74. Makers'
     * names are invented.
     */
    @Test
    void three_makers_disagree_and_each_array_has_its_own_limits() {
        ModuleMaker first = new ModuleMaker(new MakerName("First Light"), 74, 3_500, 20, false, "Manual, cleaning", 0);
        ModuleMaker second = new ModuleMaker(new MakerName("Second Sun"), null, 700, null, true, "Manual, care", 0);
        ModuleMaker third = new ModuleMaker(new MakerName("Third Day"), null, 4_000, null, true, "Manual, care", 0);
        SaveModuleMaker save = bench.get(SaveModuleMaker.class);
        ReadModuleMakers read = bench.get(ReadModuleMakers.class);
        Site field = savedSite(bench, "Field of a test");
        for (ModuleMaker maker : List.of(first, second, third)) {
            save.save(maker, OFFICE);
            Surface array = bench.get(SaveSurface.class).save(array(field.id(), 100, 4, maker.name()), OFFICE);
            assertEquals(maker.withVersion(1), read.limitsOn(array.id()).orElseThrow());
            assertEquals(maker.alkaliForbidden(), read.alkaliForbiddenOn(array.id()));
        }
        assertEquals(
                List.of(first.name(), second.name(), third.name()),
                read.all().stream().map(ModuleMaker::name).toList());
        assertThrows(
                CustomersRefusal.OutOfRange.class, () -> new ModuleMaker(first.name(), 0, null, null, false, "", 0));
    }
}
