package eaveside.kernel;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.util.Collection;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * What a command says, in 64 hex digits: tells a retry (same id, same content: answer as before) from a clash (same
 * id, other content: 409).
 *
 * <p>It is made of the content in one canonical form, not of how a record happens to print: components by name, numbers
 * without idle zeros, sets and maps in order. What is absent (null, an empty text or list) is left out, so that a command
 * may get a new optional component and a request sent before is still known afterwards.
 */
public record Fingerprint(String hex) {
    public static Fingerprint of(Record command) {
        return new Fingerprint(Digest.sha256(canonical(command).getBytes(StandardCharsets.UTF_8)));
    }

    /** The content in its canonical form. */
    static String canonical(Record command) {
        StringBuilder out = new StringBuilder();
        write(command, out);
        return out.toString();
    }

    private static void write(@Nullable Object value, StringBuilder out) {
        switch (value) {
            case null -> out.append('-');
            case BigDecimal number ->
                out.append(
                        number.signum() == 0 ? "0" : number.stripTrailingZeros().toPlainString());
            case Id id -> out.append(id.value());
            case Enum<?> constant -> out.append(constant.name());
            case String text -> quote(text, out);
            case byte[] bytes -> out.append(Digest.sha256(bytes));
            case Record part -> writeRecord(part, out);
            case Map<?, ?> map -> writeMap(map, out);
            case Set<?> set ->
                out.append(set.stream().map(Fingerprint::text).sorted().collect(Collectors.joining(",", "[", "]")));
            case Collection<?> list ->
                out.append(list.stream().map(Fingerprint::text).collect(Collectors.joining(",", "[", "]")));
            default -> quote(value.toString(), out);
        }
    }

    private static void writeRecord(Record part, StringBuilder out) {
        out.append(part.getClass().getSimpleName()).append('{');
        Records.values(part).forEach((name, value) -> {
            if (!isAbsent(value)) {
                out.append(name).append(':');
                write(value, out);
                out.append(';');
            }
        });
        out.append('}');
    }

    private static void writeMap(Map<?, ?> map, StringBuilder out) {
        Map<String, Object> sorted = new TreeMap<>();
        map.forEach((key, value) -> sorted.put(text(key), value));
        out.append('{');
        sorted.forEach((key, value) -> {
            out.append(key).append(':');
            write(value, out);
            out.append(';');
        });
        out.append('}');
    }

    private static boolean isAbsent(@Nullable Object value) {
        return value == null
                || value.equals("")
                || (value instanceof Collection<?> list && list.isEmpty())
                || (value instanceof Map<?, ?> map && map.isEmpty());
    }

    private static String text(@Nullable Object value) {
        StringBuilder out = new StringBuilder();
        write(value, out);
        return out.toString();
    }

    /** With its length, so that no text can pass for the end of itself and the beginning of another component. */
    private static void quote(String text, StringBuilder out) {
        out.append(text.length()).append('\'').append(text).append('\'');
    }
}
