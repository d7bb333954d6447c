package eaveside.web.customers;

import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.web.View;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;

/** What is known of a surface, in words: yes and no, grades by their description, the rest by their number. */
public final class Known {
    private static final int MOST_WORDS = 5;

    private Known() {}

    static boolean isYesOrNo(SurfaceAttribute attribute) {
        return attribute.lowest() == 0 && attribute.highest() == 1;
    }

    /** Whether it is chosen from a short list of words. */
    public static boolean isGrade(SurfaceAttribute attribute) {
        return attribute.highest() - attribute.lowest() < MOST_WORDS;
    }

    /** The values of a grade, each with its word. */
    public static Map<String, String> choices(View view, SurfaceAttribute attribute) {
        Map<String, String> choices = new LinkedHashMap<>();
        for (int value = attribute.lowest(); value <= attribute.highest(); value++) {
            choices.put(String.valueOf(value), word(view, attribute, value));
        }
        return choices;
    }

    /** What an attribute is and which values it takes. */
    static String meaning(View view, SurfaceAttribute attribute) {
        String values = isGrade(attribute)
                ? choices(view, attribute).entrySet().stream()
                        .map(choice -> view.t("customers.import.attribute.value", choice.getKey(), choice.getValue()))
                        .collect(Collectors.joining(", "))
                : view.t("customers.attribute.range", attribute.lowest(), attribute.highest());
        return view.t("customers.import.attribute", view.t("customers.attribute", attribute), values);
    }

    /** A value in a word where there is one for it. */
    private static String word(View view, SurfaceAttribute attribute, int value) {
        return isYesOrNo(attribute)
                ? view.t(value == 0 ? "common.no" : "common.yes")
                : isGrade(attribute)
                        ? view.t("customers.attribute." + attribute.name() + "." + value)
                        : String.valueOf(value);
    }

    public static List<String> of(View view, Surface surface) {
        return surface.attributes().entrySet().stream()
                .map(known -> of(view, known.getKey(), known.getValue()))
                .toList();
    }

    private static String of(View view, SurfaceAttribute attribute, int value) {
        String name = view.t("customers.attribute", attribute);
        return !isYesOrNo(attribute)
                ? view.t("customers.known-value", name, word(view, attribute, value))
                : value == 1 ? name : view.t("customers.known-not", name);
    }
}
