package eaveside.web.sheets;

import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.web.View;
import eaveside.web.forms.Fields;
import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Collectors;

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

    private static final Pattern QUANTITY = Pattern.compile("(-?\\d{1,15}(?:\\.\\d{1,6})?) ([A-Z0-9]{3})\\b");
    private static final Set<String> UNITS =
            Arrays.stream(Unit.values()).map(Unit::code).collect(Collectors.toSet());
    private static final int DECIMALS = 2;

    static void settle(Fields fields, View view) {
        fields.reword(text -> worded(text, view));
        FIELDS.forEach((section, names) -> names.forEach(name -> fields.moveError(name, section)));
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
