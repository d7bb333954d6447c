package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;

import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class RecordsTest {
    enum Size {
        SMALL,
        LARGE
    }

    record Thing(
            String name,
            @Default String note,
            @Default("true") boolean active,
            @Default("7") int days,
            @Default("LARGE") Size size,
            @Default List<String> parts,
            @Nullable String other) {
        Thing {
            name = Texts.required("name", name, 10);
        }
    }

    @Test
    void what_is_left_out_is_what_the_record_says() {
        assertEquals(
                new Thing("Hose", "", true, 7, Size.LARGE, List.of(), null),
                Records.completed(Thing.class, Map.of("name", "Hose")));
        assertEquals(
                new Thing("Hose", "long", false, 1, Size.SMALL, List.of("nozzle"), "x"),
                Records.completed(
                        Thing.class,
                        Map.of(
                                "name",
                                "Hose",
                                "note",
                                "long",
                                "active",
                                false,
                                "days",
                                1,
                                "size",
                                Size.SMALL,
                                "parts",
                                List.of("nozzle"),
                                "other",
                                "x")));
    }

    @Test
    void what_must_be_there_is_refused_by_the_record_itself() {
        assertThrows(KernelRefusal.BadText.class, () -> Records.completed(Thing.class, Map.of("note", "nameless")));
    }

    @Test
    void one_component_can_be_changed_and_no_other() {
        Thing hose = Records.completed(Thing.class, Map.of("name", "Hose"));
        assertEquals("Pipe", Records.with(hose, "name", "Pipe").name());
        assertThrows(IllegalArgumentException.class, () -> Records.with(hose, "nam", "Pipe"));
    }
}
