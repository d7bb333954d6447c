package eaveside.web.customers;

import eaveside.customers.ImportColumn;
import eaveside.customers.SurfaceAttribute;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;

/** An invented file of customers to begin from; it can be imported as it is. */
final class SampleFile {
    private static final List<Enum<?>> COLUMNS = Stream.<Enum<?>>concat(
                    Stream.of(ImportColumn.values()),
                    Stream.of(
                            SurfaceAttribute.STORY,
                            SurfaceAttribute.PITCH_DEGREES,
                            SurfaceAttribute.SOILING_GRADE,
                            SurfaceAttribute.GROWTH_GRADE))
            .toList();

    static final List<String> HEADER = COLUMNS.stream().map(ImportColumn::title).toList();

    static final List<List<String>> ROWS = List.of(
            row(Map.ofEntries(
                    Map.entry(ImportColumn.CUSTOMER, "Sample: Rosalind Fernley"),
                    Map.entry(ImportColumn.TYPE, "household"),
                    Map.entry(ImportColumn.STREET, "12 Larkspur Lane"),
                    Map.entry(ImportColumn.CITY, "Tansyford"),
                    Map.entry(ImportColumn.ZIP_CODE, "00042"),
                    Map.entry(ImportColumn.COUNTRY, "US"),
                    Map.entry(ImportColumn.EMAIL, "rosalind.fernley@example.com"),
                    Map.entry(ImportColumn.PHONE, "555-0142"),
                    Map.entry(ImportColumn.PAYMENT_TERM_DAYS, "14"),
                    Map.entry(ImportColumn.SITE, "Home"),
                    Map.entry(ImportColumn.ACCESS_NOTES, "Side gate, code from the customer"),
                    Map.entry(ImportColumn.HAZARDS, "Wet steps behind the house"),
                    Map.entry(ImportColumn.WATER_ON_SITE, "yes"),
                    Map.entry(ImportColumn.SURFACE, "South array"),
                    Map.entry(ImportColumn.SURFACE_TYPE, "array"),
                    Map.entry(ImportColumn.EXTENT, "48"),
                    Map.entry(ImportColumn.UNIT, "H87"),
                    Map.entry(ImportColumn.ROWS, "2"),
                    Map.entry(SurfaceAttribute.STORY, "2"),
                    Map.entry(SurfaceAttribute.PITCH_DEGREES, "30"),
                    Map.entry(SurfaceAttribute.SOILING_GRADE, "1"))),
            row(Map.of(
                    ImportColumn.CUSTOMER, "Sample: Rosalind Fernley",
                    ImportColumn.SITE, "Home",
                    ImportColumn.SURFACE, "Skylights over the stairs",
                    ImportColumn.SURFACE_TYPE, "skylight",
                    ImportColumn.EXTENT, "6")),
            row(Map.of(
                    ImportColumn.CUSTOMER, "Sample: Millrace Bakery",
                    ImportColumn.TYPE, "business",
                    ImportColumn.STREET, "3 Millrace",
                    ImportColumn.CITY, "Tansyford",
                    ImportColumn.COUNTRY, "US",
                    ImportColumn.SITE, "Bakehouse",
                    ImportColumn.SURFACE, "Roof",
                    ImportColumn.SURFACE_TYPE, "roof",
                    ImportColumn.EXTENT, "1900",
                    ImportColumn.UNIT, "FTK")));

    private SampleFile() {}

    private static List<String> row(Map<Enum<?>, String> cells) {
        List<String> row = new ArrayList<>(Collections.nCopies(COLUMNS.size(), ""));
        cells.forEach((column, text) -> row.set(COLUMNS.indexOf(column), text));
        return List.copyOf(row);
    }
}
