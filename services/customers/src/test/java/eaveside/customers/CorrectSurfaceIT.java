package eaveside.customers;

import static eaveside.customers.CustomersFixture.OFFICE;
import static eaveside.customers.CustomersFixture.array;
import static eaveside.customers.CustomersFixture.manufacturer;
import static eaveside.customers.CustomersFixture.savedSite;
import static eaveside.customers.CustomersFixture.skylights;
import static eaveside.customers.CustomersFixture.surface;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.testing.Bench;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.extension.RegisterExtension;

class CorrectSurfaceIT {
    private static final UserId TECHNICIAN = UserId.next();
    private static final VisitId VISIT = VisitId.next();

    @RegisterExtension
    static final Bench bench = new Bench();

    private static Site home;

    @BeforeAll
    static void home() {
        bench.employ(OFFICE.value(), TECHNICIAN.value());
        home = savedSite(bench, "Lou Gable");
    }

    private static Quantity pieces(long n) {
        return Quantity.of(n, Unit.PIECE);
    }

    private static Surface correct(SurfaceId surface, Quantity extent) {
        CorrectSurface use = bench.get(CorrectSurface.class);
        return bench.inTransaction(
                () -> use.correct(new CorrectSurface.Correction(surface, extent, VISIT, TECHNICIAN)));
    }

    private static Surface save(Surface surface) {
        return bench.get(SaveSurface.class).save(surface, OFFICE);
    }

    @Test
    void a_surface_counted_again_keeps_its_history() {
        Surface six = save(skylights(home.id(), 6));
        Surface ten = correct(six.id(), pieces(10));
        assertEquals(pieces(10), ten.extent());
        assertEquals(2, ten.version());
        assertEquals(ten, correct(six.id(), pieces(10)), "the same again changes nothing");
        Surface nine = save(ten.withExtent(pieces(9)));
        ReadSurfaces read = bench.get(ReadSurfaces.class);
        assertEquals(nine, read.surface(six.id()));
        var at = bench.clock().instant();
        assertEquals(
                List.of(
                        new SurfaceCount(six.id(), null, pieces(6), null, OFFICE, at),
                        new SurfaceCount(six.id(), pieces(6), pieces(10), VISIT, TECHNICIAN, at),
                        new SurfaceCount(six.id(), pieces(10), pieces(9), null, OFFICE, at)),
                read.history(six.id()));
        assertEquals(Map.of(six.id(), read.history(six.id())), read.histories(Set.of(six.id())));
        assertThrows(KernelRefusal.Stale.class, () -> save(six.withExtent(pieces(7))));
    }

    @Test
    void a_surface_found_on_site_names_its_visit() {
        Surface found = skylights(home.id(), 4);
        CorrectSurface use = bench.get(CorrectSurface.class);
        Surface added = bench.inTransaction(() -> use.add(new CorrectSurface.Find(found, VISIT, TECHNICIAN)));
        assertEquals(added, bench.inTransaction(() -> use.add(new CorrectSurface.Find(found, VISIT, TECHNICIAN))));
        List<SurfaceCount> history = bench.get(ReadSurfaces.class).history(added.id());
        assertEquals(1, history.size());
        assertEquals(VISIT, history.getFirst().visit());
        assertTrue(bench.get(ReadSurfaces.class).ofSite(home.id()).contains(added));
    }

    @Test
    void two_corrections_in_one_transaction_both_count_and_a_rollback_leaves_nothing() {
        Surface panels = save(array(home.id(), 48, 2, null));
        CorrectSurface use = bench.get(CorrectSurface.class);
        bench.inTransaction(() -> {
            bench.get(ReadSurfaces.class).surface(panels.id());
            use.correct(new CorrectSurface.Correction(panels.id(), pieces(46), VISIT, TECHNICIAN));
            return use.correct(new CorrectSurface.Correction(panels.id(), pieces(1), VISIT, TECHNICIAN));
        });
        Surface one = bench.get(ReadSurfaces.class).surface(panels.id());
        assertEquals(pieces(1), one.extent());
        assertEquals(1, one.rows(), "no more rows than panels");
        assertEquals(panels.attributes(), one.attributes());
        assertEquals(3, bench.get(ReadSurfaces.class).history(panels.id()).size());
        assertThrows(
                IllegalStateException.class,
                () -> bench.inTransaction(() -> {
                    use.correct(new CorrectSurface.Correction(panels.id(), pieces(5), VISIT, TECHNICIAN));
                    throw new IllegalStateException("the sheet fails");
                }));
        assertEquals(one, bench.get(ReadSurfaces.class).surface(panels.id()));
        assertEquals(3, bench.get(ReadSurfaces.class).history(panels.id()).size());
    }

    @Test
    void corrections_that_cannot_be_are_refused() {
        Surface panes = save(surface(home.id(), SurfaceType.WINDOW, pieces(22), Map.of()));
        assertThrows(KernelRefusal.NotFound.class, () -> correct(SurfaceId.next(), pieces(1)));
        assertThrows(KernelRefusal.WrongUnit.class, () -> correct(panes.id(), Quantity.of(2, Unit.SQUARE_FOOT)));
        assertThrows(KernelRefusal.NotWhole.class, () -> correct(panes.id(), Quantity.of("2.5", Unit.PIECE)));
        assertThrows(
                IllegalStateException.class,
                () -> bench.get(CorrectSurface.class)
                        .correct(new CorrectSurface.Correction(panes.id(), pieces(1), VISIT, TECHNICIAN)),
                "only within a sheet's transaction");
        save(new Surface(panes.id(), panes.site(), panes.type(), "Gone", pieces(22), 0, null, Map.of(), false, 1));
        assertThrows(KernelRefusal.NotActive.class, () -> correct(panes.id(), pieces(3)));
    }

    @Test
    void saving_refuses_unknown_sites_and_manufacturers_and_another_site_or_type() {
        assertThrows(KernelRefusal.NotFound.class, () -> save(skylights(SiteId.next(), 2)));
        assertThrows(
                KernelRefusal.NotFound.class, () -> save(array(home.id(), 8, 1, new ManufacturerName("Unheard of"))));
        assertThrows(
                KernelRefusal.NotFound.class, () -> save(skylights(home.id(), 2).withVersion(7)));
        Surface saved = save(skylights(home.id(), 2));
        Site other = savedSite(bench, "Elsewhere");
        assertThrows(
                KernelRefusal.Fixed.class,
                () -> save(
                        new Surface(saved.id(), other.id(), saved.type(), "x", pieces(2), 0, null, Map.of(), true, 1)));
        assertThrows(
                KernelRefusal.Fixed.class,
                () -> save(new Surface(
                        saved.id(), home.id(), SurfaceType.WINDOW, "x", pieces(2), 0, null, Map.of(), true, 1)));
    }

    @Test
    void attributes_are_added_changed_and_taken_away() {
        Surface saved = save(array(home.id(), 20, 2, null));
        Map<SurfaceAttribute, Integer> others = Map.of(SurfaceAttribute.STORY, 3, SurfaceAttribute.SOILING_GRADE, 2);
        Surface edited = save(new Surface(
                saved.id(), home.id(), SurfaceType.ARRAY, saved.name(), pieces(20), 2, null, others, true, 1));
        assertEquals(2, edited.version());
        assertEquals(others, bench.get(ReadSurfaces.class).surface(saved.id()).attributes());
        assertEquals(Map.of(saved.id(), edited), bench.get(ReadSurfaces.class).surfaces(Set.of(saved.id())));
        assertEquals(1, bench.get(ReadSurfaces.class).history(saved.id()).size());
    }

    @Test
    void limits_for_washing_hold_by_manufacturer() {
        SavePanelManufacturer save = bench.get(SavePanelManufacturer.class);
        ReadPanelManufacturers read = bench.get(ReadPanelManufacturers.class);
        PanelManufacturer strict = save.save(manufacturer("Manufacturer of a test", 700, true), OFFICE);
        assertEquals(strict, save.save(manufacturer("Manufacturer of a test", 700, true), OFFICE));
        assertEquals(
                1L,
                bench.value("select count(*) from audit_event where action = 'panel-manufacturer.save'"
                        + " and subject = 'Manufacturer of a test'"));
        assertThrows(
                KernelRefusal.Taken.class, () -> save.save(manufacturer("MANUFACTURER of a test", 1, false), OFFICE));
        assertThrows(
                KernelRefusal.Stale.class, () -> save.save(manufacturer("Manufacturer of a test", 800, true), OFFICE));
        Surface array = save(array(home.id(), 12, 1, strict.name()));
        Surface unknown = save(array(home.id(), 12, 1, null));
        assertTrue(read.alkaliForbiddenOn(array.id()));
        assertFalse(read.alkaliForbiddenOn(unknown.id()));
        assertEquals(
                Set.of(array.id()), read.alkaliForbiddenAmong(List.of(array.id(), unknown.id(), SurfaceId.next())));
        assertEquals(strict, read.limitsOn(array.id()).orElseThrow());
        assertTrue(read.limitsOn(unknown.id()).isEmpty());
        save.save(manufacturer("Manufacturer of a test", 700, false).withVersion(1), OFFICE);
        assertFalse(read.alkaliForbiddenOn(array.id()));
    }
}
