package eaveside.web.sheets;

import eaveside.web.forms.Fields;
import java.util.List;
import java.util.Map;

/** Puts a use case's refusal at the part of the sheet that it is about, where it names no field of the page. */
final class Sections {
    /** Which fields of the use case each part of the sheet is about. */
    private static final Map<String, List<String>> FIELDS = Map.of(
            "used", List.of("quantity", "item", "lot", "mix", "unit", "location"),
            "count", List.of("cost"),
            "water", List.of("reading"),
            "extras", List.of("serviceItem", "surface"),
            "surfaces", List.of("extent"),
            "findings", List.of("photos", "type", "severity"),
            "lines", List.of("finding"));

    /** Which part of the sheet each list of the use case is about. */
    private static final Map<String, String> LISTS = Map.of(
            "count.", "count",
            "mixes[", "used",
            "brushes[", "used",
            "items[", "used",
            "readings[", "water",
            "extras[", "extras",
            "surfaces[", "surfaces",
            "newSurfaces[", "surfaces",
            "findings[", "findings",
            "lines[", "lines");

    private Sections() {}

    static void settle(Fields fields) {
        // What is wrong in a row is told at its part of the sheet: the sentence says which of the goods.
        List.copyOf(fields.errors().keySet())
                .forEach(name -> LISTS.forEach((list, section) -> {
                    if (name.startsWith(list)) {
                        fields.moveError(name, section);
                    }
                }));
        FIELDS.forEach((section, names) -> names.forEach(name -> fields.moveError(name, section)));
    }
}
