package eaveside.visits.internal;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.OfferingId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.VisitLineId;
import eaveside.visits.DifferenceKind;
import eaveside.visits.SkipReason;
import eaveside.visits.VisitRefusal;
import eaveside.visits.VisitSheet;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ScopeDifferencesTest {
    private static final VisitLineId PANELS = VisitLineId.next();
    private static final VisitLineId ROOF = VisitLineId.next();
    private static final Map<VisitLineId, Quantity> PLAN =
            Map.of(PANELS, pieces(48), ROOF, Quantity.of(1900, Unit.SQUARE_FOOT));

    private static Quantity pieces(int count) {
        return Quantity.of(count, Unit.PIECE);
    }

    private static VisitSheet.DoneLine panels(int done, VisitSheet.Skip... skips) {
        return new VisitSheet.DoneLine(PANELS, pieces(done), List.of(skips));
    }

    private static VisitSheet.DoneLine roof() {
        return new VisitSheet.DoneLine(ROOF, Quantity.of(1900, Unit.SQUARE_FOOT), List.of());
    }

    private static VisitSheet.Skip skip(int units, SkipReason reason) {
        return new VisitSheet.Skip(pieces(units), reason, "", null);
    }

    private static VisitSheet.Extra extra(VisitLineId id) {
        return new VisitSheet.Extra(id, OfferingId.next(), null, pieces(4), "The owner");
    }

    @Test
    void all_done_as_planned_differs_in_nothing() {
        ScopeDifferences scope = ScopeDifferences.between(PLAN, List.of(panels(48), roof()), List.of());
        assertTrue(scope.found().isEmpty());
        assertEquals(pieces(48), scope.doneOf(PANELS));
    }

    @Test
    void each_skip_and_each_extra_is_a_difference_of_its_own() {
        VisitLineId more = VisitLineId.next();
        ScopeDifferences scope = ScopeDifferences.between(
                PLAN,
                List.of(panels(45, skip(2, SkipReason.CRACKED), skip(1, SkipReason.NO_ACCESS)), roof()),
                List.of(extra(more)));
        assertEquals(
                List.of(
                        new ScopeDifferences.Found(DifferenceKind.SKIPPED, PANELS, pieces(2), SkipReason.CRACKED),
                        new ScopeDifferences.Found(DifferenceKind.SKIPPED, PANELS, pieces(1), SkipReason.NO_ACCESS),
                        new ScopeDifferences.Found(DifferenceKind.EXTRA, more, pieces(4), null)),
                scope.found());
    }

    @Test
    void a_quantity_in_a_like_unit_is_taken_in_the_plans_unit() {
        VisitLineId area = VisitLineId.next();
        ScopeDifferences scope = ScopeDifferences.between(
                Map.of(area, Quantity.of("9.290304", Unit.SQUARE_METRE)),
                List.of(new VisitSheet.DoneLine(area, Quantity.of(100, Unit.SQUARE_FOOT), List.of())),
                List.of());
        assertEquals(Quantity.of("9.290304", Unit.SQUARE_METRE), scope.doneOf(area));
        assertThrows(
                KernelRefusal.UnlikeUnits.class,
                () -> ScopeDifferences.between(
                        Map.of(area, pieces(3)),
                        List.of(new VisitSheet.DoneLine(area, Quantity.of(3, Unit.SQUARE_FOOT), List.of())),
                        List.of()));
    }

    @Test
    void planned_units_that_are_neither_done_nor_skipped_are_refused() {
        assertThrows(
                VisitRefusal.LineNotAccounted.class,
                () -> ScopeDifferences.between(PLAN, List.of(panels(46), roof()), List.of()));
        assertThrows(
                VisitRefusal.LineNotAccounted.class,
                () -> ScopeDifferences.between(PLAN, List.of(panels(50), roof()), List.of()));
        assertThrows(
                VisitRefusal.LineNotAccounted.class,
                () -> ScopeDifferences.between(
                        PLAN, List.of(panels(48, skip(2, SkipReason.CRACKED)), roof()), List.of()));
        assertThrows(
                VisitRefusal.LineMissing.class, () -> ScopeDifferences.between(PLAN, List.of(panels(48)), List.of()));
    }

    @Test
    void unknown_and_repeated_lines_are_refused() {
        assertThrows(
                VisitRefusal.NamedTwice.class,
                () -> ScopeDifferences.between(PLAN, List.of(panels(48), panels(48), roof()), List.of()));
        assertThrows(
                VisitRefusal.NotOnVisit.class,
                () -> ScopeDifferences.between(
                        PLAN,
                        List.of(panels(48), roof(), new VisitSheet.DoneLine(VisitLineId.next(), pieces(1), List.of())),
                        List.of()));
        VisitLineId twice = VisitLineId.next();
        assertThrows(
                VisitRefusal.NamedTwice.class,
                () -> ScopeDifferences.between(PLAN, List.of(panels(48), roof()), List.of(extra(twice), extra(twice))));
        assertThrows(
                VisitRefusal.NamedTwice.class,
                () -> ScopeDifferences.between(PLAN, List.of(panels(48), roof()), List.of(extra(PANELS))));
    }

    @Test
    void a_sheet_cannot_say_less_than_nothing() {
        assertThrows(VisitRefusal.Negative.class, () -> panels(-1));
        assertThrows(VisitRefusal.NotPositive.class, () -> skip(0, SkipReason.OTHER));
    }
}
