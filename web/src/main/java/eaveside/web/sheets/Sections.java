package eaveside.web.sheets;

import eaveside.web.forms.Fields;
import java.util.Map;

/** Puts a use case's refusal at the part of the sheet that it is about, where it names no field of the page. */
final class Sections {
    private static final Map<String, String> OF = Map.ofEntries(
            Map.entry("quantity", "used"),
            Map.entry("item", "used"),
            Map.entry("lot", "used"),
            Map.entry("mix", "used"),
            Map.entry("unit", "used"),
            Map.entry("place", "used"),
            Map.entry("cost", "count"),
            Map.entry("reading", "water"),
            Map.entry("offering", "extras"),
            Map.entry("surface", "extras"),
            Map.entry("extent", "surfaces"),
            Map.entry("photos", "findings"),
            Map.entry("kind", "findings"),
            Map.entry("severity", "findings"),
            Map.entry("finding", "lines"));

    private Sections() {}

    static void settle(Fields fields) {
        for (Map.Entry<String, String> section : OF.entrySet()) {
            String error = fields.errors().remove(section.getKey());
            if (error != null) {
                fields.errors().putIfAbsent(section.getValue(), error);
            }
        }
    }
}
