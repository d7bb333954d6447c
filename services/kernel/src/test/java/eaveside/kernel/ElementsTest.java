package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

class ElementsTest {
    private record Line(String item, int quantity) {}

    private static final List<Line> LINES = List.of(new Line("soap", 1), new Line("resin", 0));

    private static Refusal refused(String... fields) {
        return assertThrows(
                Refusal.class,
                () -> Elements.each("lines", LINES, (line, i) -> {
                    if (line.quantity() == 0) {
                        throw new Wrong(fields);
                    }
                }));
    }

    private static final class Wrong extends Refusal {
        private static final long serialVersionUID = 1;

        private Wrong(String... fields) {
            super(Type.RULE, "{field} is wrong", fields);
        }
    }

    @Test
    void a_refusal_names_the_element_that_it_is_about() {
        assertEquals(List.of("lines[1].quantity"), refused("quantity").fields());
        assertEquals(
                "lines[1].quantity", refused("quantity").problems().getFirst().field());
    }

    @Test
    void a_field_that_the_element_does_not_have_keeps_its_name() {
        assertEquals(List.of("lines[1].item", "date"), refused("item", "date").fields());
    }

    private record Order(List<Line> lines, String date, Map<Size, Integer> sizes) {}

    private enum Size {
        WIDE
    }

    private static final Order ORDER = new Order(LINES, "today", Map.of());

    private static Refusal refusedInside(String... fields) {
        return assertThrows(
                Refusal.class,
                () -> Elements.inside("order", ORDER, () -> {
                    throw refused(fields);
                }));
    }

    @Test
    void within_two_each_field_lies_where_it_belongs() {
        assertEquals(
                List.of("order.lines[1].item", "order.date", "order.sizes.WIDE", "other"),
                refusedInside("item", "date", "WIDE", "other").fields());
        assertEquals(
                List.of("order.lines[1].item.code"), refusedInside("item.code").fields());
    }

    /** Scripts know paths, people the words of their last part. */
    @Test
    void a_page_is_told_no_path() {
        assertEquals(
                "order.lines[1].quantity is wrong", refusedInside("quantity").text());
        assertEquals("Quantity is wrong", refusedInside("quantity").said());
        Refusal several = new KernelRefusal.Several(List.of(refused("item"), refused("quantity")));
        assertEquals("lines[1].item is wrong. lines[1].quantity is wrong", several.text());
        assertEquals("Item is wrong. Quantity is wrong", several.said());
    }

    @Test
    void a_list_may_be_called_otherwise_in_the_command_around_it() {
        Refusal moved = assertThrows(
                Refusal.class,
                () -> Elements.within("lines", "count.counted", () -> {
                    throw refused("item", "date");
                }));
        assertEquals(List.of("count.counted[1].item", "date"), moved.fields());
    }

    @Test
    void an_element_may_be_made_of_one_of_several_lists_that_calls_its_fields_otherwise() {
        List<Elements.Origin> origins = List.of(
                Elements.Origin.of("mixes", 0, Map.of("quantity", "volume")),
                Elements.Origin.of("brushes", 4, Map.of("quantity", "units")));
        Refusal refused = assertThrows(
                Refusal.class,
                () -> Elements.of("lines", origins, () -> {
                    throw refused("quantity", "item", "date");
                }));
        assertEquals(List.of("brushes[4].units", "brushes[4].item", "date"), refused.fields());
        assertEquals(
                List.of("brushes[4].units", "brushes[4].item", "completedOn"),
                refused.called("date", "completedOn").called("date", "day").fields(),
                "who names it first knows it best");
        assertEquals(
                "brushes[4].item",
                refused.called("item", "thing").fields().get(1),
                "a field within an element is not the command's");
    }
}
