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
            "completedOn", List.of("date"),
            "water", List.of("reading"),
            "extras", List.of("serviceItem", "surface"),
            "surfaces", List.of("extent"),
            "findings", List.of("photos", "type", "severity"),
            "lines", List.of("finding"));

    private Sections() {}

    static void settle(Fields fields) {
        // What is wrong in a row of the count is told at the count.
        List.copyOf(fields.errors().keySet()).stream()
                .filter(name -> name.startsWith("count."))
                .forEach(name -> fields.moveError(name, "count"));
        FIELDS.forEach((section, names) -> names.forEach(name -> fields.moveError(name, section)));
    }
}
