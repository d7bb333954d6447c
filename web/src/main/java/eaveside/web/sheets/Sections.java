package eaveside.web.sheets;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

/** Puts a use case's refusal at the part of the sheet that it is about, where it names no field of the page. */
final class Sections {
    private static final Map<String, String> OF = Map.ofEntries(
            Map.entry("quantity", "used"),
            Map.entry("item", "used"),
            Map.entry("lot", "used"),
            Map.entry("mix", "used"),
            Map.entry("unit", "used"),
            Map.entry("location", "used"),
            Map.entry("cost", "count"),
            Map.entry("date", "completedOn"),
            Map.entry("reading", "water"),
            Map.entry("serviceItem", "extras"),
            Map.entry("surface", "extras"),
            Map.entry("extent", "surfaces"),
            Map.entry("photos", "findings"),
            Map.entry("type", "findings"),
            Map.entry("severity", "findings"),
            Map.entry("finding", "lines"));

    private Sections() {}

    private static final Pattern QUANTITY = Pattern.compile("(-?\\d{1,15}(?:\\.\\d{1,6})?) ([A-Z0-9]{3})\\b");
    private static final Set<String> UNITS =
            Arrays.stream(Unit.values()).map(Unit::code).collect(Collectors.toSet());
    private static final int DECIMALS = 2;

    static void settle(Fields fields, View view) {
        fields.reword(text -> worded(text, view));
        OF.forEach(fields::moveError);
    }

    /** Quantities as this company writes them: a refusal writes them with their codes. */
    static String worded(String text, View view) {
        return QUANTITY.matcher(text)
                .replaceAll(found -> Matcher.quoteReplacement(
                        UNITS.contains(found.group(2))
                                ? view.exactly(Quantity.of(
                                        new BigDecimal(found.group(1)).setScale(DECIMALS, RoundingMode.HALF_UP),
                                        Unit.ofCode(found.group(2))))
                                : found.group()));
    }
}
