package eaveside.customers;

import static eaveside.customers.CustomersFixture.array;
import static eaveside.customers.CustomersFixture.skylights;
import static eaveside.customers.CustomersFixture.surface;
import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.Unit;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

class SurfaceTest {
    private static final SiteId SITE = SiteId.next();

    @Test
    void each_type_is_counted_in_its_own_units() {
        assertEquals(
                Quantity.of(1900, Unit.SQUARE_FOOT),
                surface(SITE, SurfaceType.ROOF, Quantity.of("1900.0", Unit.SQUARE_FOOT), Map.of())
                        .extent());
        assertThrows(
                KernelRefusal.WrongUnit.class,
                () -> surface(SITE, SurfaceType.ROOF, Quantity.of(1, Unit.PIECE), Map.of()));
        assertThrows(
                KernelRefusal.WrongUnit.class,
                () -> surface(SITE, SurfaceType.WINDOW, Quantity.of(1, Unit.SQUARE_METER), Map.of()));
        assertThrows(
                KernelRefusal.NotWhole.class,
                () -> surface(SITE, SurfaceType.WINDOW, Quantity.of("1.5", Unit.PIECE), Map.of()));
        assertThrows(KernelRefusal.NotPositive.class, () -> skylights(SITE, 0));
    }

    @Test
    void only_an_array_has_rows_and_never_more_than_panels() {
        assertThrows(KernelRefusal.OutOfRange.class, () -> array(SITE, 48, -1, null));
        assertThrows(KernelRefusal.OutOfRange.class, () -> array(SITE, 4, 5, null));
        Surface array = array(SITE, 48, 2, null);
        assertEquals(2, array.withExtent(Quantity.of(46, Unit.PIECE)).rows());
        assertEquals(1, array.withExtent(Quantity.of(1, Unit.PIECE)).rows());
        assertThrows(KernelRefusal.WrongUnit.class, () -> array.withExtent(Quantity.of(1, Unit.SQUARE_FOOT)));
    }

    @Test
    void everything_that_is_wrong_is_said_at_once() {
        KernelRefusal.Several refused = assertThrows(
                KernelRefusal.Several.class,
                () -> surface(
                        SITE,
                        SurfaceType.WINDOW,
                        Quantity.of("2.5", Unit.PIECE),
                        Map.of(SurfaceAttribute.STORY, 99, SurfaceAttribute.PITCH_DEGREES, 10)));
        assertEquals(List.of("extent", "STORY", "PITCH_DEGREES"), refused.fields());
    }

    @ParameterizedTest
    @EnumSource(SurfaceAttribute.class)
    void an_attribute_is_taken_in_its_range_and_on_its_types_only(SurfaceAttribute attribute) {
        for (SurfaceType type : new SurfaceType[] {SurfaceType.SKYLIGHT, SurfaceType.WINDOW, SurfaceType.ROOF}) {
            Quantity extent = Quantity.of(10, type.units().getFirst());
            if (attribute.appliesTo(type)) {
                surface(SITE, type, extent, Map.of(attribute, attribute.lowest()));
                surface(SITE, type, extent, Map.of(attribute, attribute.highest()));
                KernelRefusal refused = assertThrows(
                        KernelRefusal.OutOfRange.class,
                        () -> surface(SITE, type, extent, Map.of(attribute, attribute.highest() + 1)));
                assertTrue(refused.fields().contains(attribute.name()));
                assertThrows(
                        KernelRefusal.OutOfRange.class,
                        () -> surface(SITE, type, extent, Map.of(attribute, attribute.lowest() - 1)));
            } else {
                assertThrows(
                        CustomersRefusal.NotForThisType.class,
                        () -> surface(SITE, type, extent, Map.of(attribute, attribute.lowest())));
            }
        }
    }

    @Test
    void equal_surfaces_read_the_same_whatever_the_order_of_their_attributes() {
        Map<SurfaceAttribute, Integer> one = new LinkedHashMap<>();
        one.put(SurfaceAttribute.STORY, 1);
        one.put(SurfaceAttribute.FROM_INSIDE, 1);
        Map<SurfaceAttribute, Integer> other = new LinkedHashMap<>();
        other.put(SurfaceAttribute.FROM_INSIDE, 1);
        other.put(SurfaceAttribute.STORY, 1);
        Quantity six = Quantity.of(6, Unit.PIECE);
        assertEquals(
                surface(SITE, SurfaceType.SKYLIGHT, six, one).attributes().toString(),
                surface(SITE, SurfaceType.SKYLIGHT, six, other).attributes().toString());
    }

    @Test
    void addresses_and_ways_to_reach_somebody_are_checked() {
        assertThrows(CustomersRefusal.UnknownCountry.class, () -> new Address("", "", "", "", "XX"));
        assertThrows(KernelRefusal.BadText.class, () -> new Address("", "", "", "", ""));
        assertThrows(CustomersRefusal.NotAnEmail.class, () -> Reach.email("ann at example.com"));
        assertThrows(CustomersRefusal.NotAnEmail.class, () -> Reach.email("a@b@example.com"));
        assertEquals("ann@example.com", Reach.email(" ann@example.com "));
        assertEquals(
                "1 Eaves Road, Gutterby, 00001",
                CustomersFixture.address("1 Eaves Road").oneLine());
    }
}
