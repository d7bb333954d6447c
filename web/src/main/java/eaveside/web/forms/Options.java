package eaveside.web.forms;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/** What a select offers, in order: from what is sent to what is shown. */
public final class Options {
    private Options() {}

    public static <T> Map<String, String> of(Stream<T> things, Function<T, ?> sent, Function<T, String> shown) {
        Map<String, String> options = new LinkedHashMap<>();
        things.forEach(thing -> options.put(String.valueOf(sent.apply(thing)), shown.apply(thing)));
        return options;
    }
}
