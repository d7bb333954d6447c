package eaveside.web.forms;

import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Stream;

/**
 * What a select offers, in the order of the things: from what is sent to what is shown. The first of several that would send
 * the same is the one.
 */
public final class Options {
    private Options() {}

    public static <T> Map<String, String> of(Stream<T> things, Function<T, ?> sent, Function<T, String> shown) {
        Map<String, String> options = new LinkedHashMap<>();
        things.forEach(thing -> options.putIfAbsent(String.valueOf(sent.apply(thing)), shown.apply(thing)));
        return options;
    }

    public static <T> Map<String, String> of(Collection<T> things, Function<T, ?> sent, Function<T, String> shown) {
        return of(things.stream(), sent, shown);
    }
}
