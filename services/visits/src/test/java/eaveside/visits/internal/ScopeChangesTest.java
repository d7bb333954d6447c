package eaveside.visits.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitLineId;
import eaveside.visits.JobSheet;
import eaveside.visits.ScopeChangeType;
import eaveside.visits.SkipReason;
import eaveside.visits.VisitRefusal;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ScopeChangesTest {
    private static final VisitLineId PANELS = VisitLineId.next();
    private static final VisitLineId ROOF = VisitLineId.next();
    private static final Map<VisitLineId, Quantity> PLAN =
            Map.of(PANELS, pieces(48), ROOF, Quantity.of(1900, Unit.SQUARE_FOOT));

    private static Quantity pieces(int count) {
        return Quantity.of(count, Unit.PIECE);
    }

    private static JobSheet.DoneLine panels(int done, JobSheet.Skip... skips) {
        return new JobSheet.DoneLine(PANELS, pieces(done), List.of(skips));
    }

    private static JobSheet.DoneLine roof() {
        return new JobSheet.DoneLine(ROOF, Quantity.of(1900, Unit.SQUARE_FOOT), List.of());
    }

    private static JobSheet.Skip skip(int units, SkipReason reason) {
        return new JobSheet.Skip(pieces(units), reason, "", null);
    }

    private static JobSheet.Extra extra(VisitLineId id) {
        return new JobSheet.Extra(id, ServiceItemId.next(), null, pieces(4), "The owner");
    }

    @Test
    void all_done_as_planned_differs_in_nothing() {
        ScopeChanges scope = ScopeChanges.between(PLAN, List.of(panels(48), roof()), List.of());
        assertTrue(scope.found().isEmpty());
        assertEquals(pieces(48), scope.doneOf(PANELS));
    }

    @Test
    void each_skip_and_each_extra_is_a_scope_change_of_its_own() {
        VisitLineId more = VisitLineId.next();
        ScopeChanges scope = ScopeChanges.between(
                PLAN,
                List.of(panels(45, skip(2, SkipReason.CRACKED), skip(1, SkipReason.NO_ACCESS)), roof()),
                List.of(extra(more)));
        assertEquals(
                List.of(
                        new ScopeChanges.Found(ScopeChangeType.SKIPPED, PANELS, pieces(2), SkipReason.CRACKED),
                        new ScopeChanges.Found(ScopeChangeType.SKIPPED, PANELS, pieces(1), SkipReason.NO_ACCESS),
                        new ScopeChanges.Found(ScopeChangeType.EXTRA, more, pieces(4), null)),
                scope.found());
    }

    @Test
    void a_quantity_in_a_like_unit_is_taken_in_the_plans_unit() {
        VisitLineId area = VisitLineId.next();
        ScopeChanges scope = ScopeChanges.between(
                Map.of(area, Quantity.of("9.290304", Unit.SQUARE_METER)),
                List.of(new JobSheet.DoneLine(area, Quantity.of(100, Unit.SQUARE_FOOT), List.of())),
                List.of());
        assertEquals(Quantity.of("9.290304", Unit.SQUARE_METER), scope.doneOf(area));
        assertThrows(
                KernelRefusal.UnlikeUnits.class,
                () -> ScopeChanges.between(
                        Map.of(area, pieces(3)),
                        List.of(new JobSheet.DoneLine(area, Quantity.of(3, Unit.SQUARE_FOOT), List.of())),
                        List.of()));
    }

    @Test
    void planned_units_that_are_neither_done_nor_skipped_are_refused() {
        assertThrows(
                VisitRefusal.LineNotAccounted.class,
                () -> ScopeChanges.between(PLAN, List.of(panels(46), roof()), List.of()));
        assertThrows(
                VisitRefusal.LineNotAccounted.class,
                () -> ScopeChanges.between(PLAN, List.of(panels(50), roof()), List.of()));
        assertThrows(
                VisitRefusal.LineNotAccounted.class,
                () -> ScopeChanges.between(PLAN, List.of(panels(48, skip(2, SkipReason.CRACKED)), roof()), List.of()));
        assertThrows(VisitRefusal.LineMissing.class, () -> ScopeChanges.between(PLAN, List.of(panels(48)), List.of()));
    }

    @Test
    void unknown_and_repeated_lines_are_refused() {
        assertThrows(
                KernelRefusal.Twice.class,
                () -> ScopeChanges.between(PLAN, List.of(panels(48), panels(48), roof()), List.of()));
        assertThrows(
                VisitRefusal.NotOnVisit.class,
                () -> ScopeChanges.between(
                        PLAN,
                        List.of(panels(48), roof(), new JobSheet.DoneLine(VisitLineId.next(), pieces(1), List.of())),
                        List.of()));
        VisitLineId twice = VisitLineId.next();
        assertThrows(
                KernelRefusal.Twice.class,
                () -> ScopeChanges.between(PLAN, List.of(panels(48), roof()), List.of(extra(twice), extra(twice))));
        assertThrows(
                KernelRefusal.Twice.class,
                () -> ScopeChanges.between(PLAN, List.of(panels(48), roof()), List.of(extra(PANELS))));
    }

    @Test
    void a_sheet_cannot_say_less_than_nothing() {
        assertThrows(KernelRefusal.Negative.class, () -> panels(-1));
        assertThrows(KernelRefusal.NotPositive.class, () -> skip(0, SkipReason.OTHER));
    }
}
