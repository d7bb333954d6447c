package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.array;
import static eaveside.customers.CustomersFixture.savedSite;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import eaveside.kernel.KernelRefusal;
import eaveside.testing.Bench;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

@Tag("database")
class WashLimitsPublishedExamplesTest {
    @RegisterExtension
    static final Bench bench = new Bench();

    /**
     * Source: RenewSys, Water Rules for Cleaning Solar Panels (undated in the copy read in 2026): water hardness below
     * 75 mg/L, which is entered as at most 74, pressure to 35 bar (3,500 kPa) and water within 20 degrees of the glass.
     *
     * <p>Source: Trina Solar, Duomax series user manual, document PS-M-0869, version A (December 19, 2019), §6.3:
     * pressure to 700 kPa. Source: ZNSHINE Solar, installation manual, document QES/ZX-RD-III032A (undated in the copy
     * read in 2026), §6.3: the same, and no alkaline solvents.
     *
     * <p>Source: Canadian Solar, installation manual IM/GN-BM-EU/1.21 (July 2019), page 28, module cleaning: pressure
     * to 4 MPa (4,000 kPa), no alkali and a near-neutral pH. The names in the test are invented.
     */
    @Test
    void three_manufacturers_disagree_and_each_array_has_its_own_limits() {
        PanelManufacturer first =
                new PanelManufacturer(new ManufacturerName("First Light"), 74, 3_500, 20, false, "Manual, cleaning", 0);
        PanelManufacturer second =
                new PanelManufacturer(new ManufacturerName("Second Sun"), null, 700, null, true, "Manual, care", 0);
        PanelManufacturer third =
                new PanelManufacturer(new ManufacturerName("Third Day"), null, 4_000, null, true, "Manual, care", 0);
        bench.employ(OFFICE.value());
        SavePanelManufacturer save = bench.get(SavePanelManufacturer.class);
        ReadPanelManufacturers read = bench.get(ReadPanelManufacturers.class);
        Site field = savedSite(bench, "Field of a test");
        for (PanelManufacturer manufacturer : List.of(first, second, third)) {
            save.save(manufacturer, OFFICE);
            Surface array = bench.get(SaveSurface.class).save(array(field.id(), 100, 4, manufacturer.name()), OFFICE);
            assertEquals(manufacturer.withVersion(1), read.limitsOn(array.id()).orElseThrow());
            assertEquals(manufacturer.alkaliForbidden(), read.alkaliForbiddenOn(array.id()));
        }
        assertEquals(
                List.of(first.name(), second.name(), third.name()),
                read.all().stream().map(PanelManufacturer::name).toList());
        assertThrows(KernelRefusal.Unfit.class, () -> new PanelManufacturer(first.name(), 0, null, null, false, "", 0));
    }
}
