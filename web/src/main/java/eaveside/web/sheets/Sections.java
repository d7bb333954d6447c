package eaveside.web.sheets;

import eaveside.web.forms.Fields;
import java.util.List;
import java.util.Map;

/** Puts a use case's refusal at the part of the sheet that it is about, where it names no field of the page. */
final class Sections {
    /** What is about a part of the sheet as a whole, by the use case's name for it. */
    private static final Map<String, String> WHOLE = Map.of("location", "used");

    /** Which part of the sheet each list of the use case is about; a new surface is that of an extra. */
    private static final Map<String, String> LISTS = Map.of(
            "count.", "count",
            "mixes[", "used",
            "brushes[", "used",
            "items[", "used",
            "readings[", "water",
            "extras[", "extras",
            "surfaces[", "surfaces",
            "newSurfaces[", "extras",
            "findings[", "findings",
            "lines[", "lines");

    private Sections() {}

    static void settle(Fields fields) {
        // What is wrong in a row is told at its part of the sheet: the sentence says which of the goods.
        List.copyOf(fields.wrong())
                .forEach(name -> LISTS.forEach((list, section) -> {
                    if (name.startsWith(list)) {
                        fields.moveError(name, section);
                    }
                }));
        WHOLE.forEach(fields::moveError);
    }
}
