package eaveside.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Collections;
import java.util.HashSet;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.TreeSet;
import java.util.regex.Pattern;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/**
 * A text that nothing shows any more is deleted. One is in use where a template or a class names its key, whole or as {@code
 * ?done=key}; where a key is begun ({@code "visits.counted." + basis}), ended ({@code bundle + ".saved"}) or completed by a
 * constant ({@code t("visits.status", status)}); or where it is the label, hint, unit or choice of a field: under its bundle's
 * name, by the name of a record's component or of a field that a page names itself.
 */
class TextsInUseTest {
    private static final Path WEB = Modules.ROOT.resolve("web/src/main");
    private static final Pattern LITERAL = Pattern.compile("(?:\"|done=)([\\w.-]+)\"");
    private static final Pattern HEADER =
            Pattern.compile("\\brecord \\w+(?:<[^>]*>)?(\\((?:[^()]|\\((?:[^()]|\\([^()]*\\))*\\))*\\))");
    private static final Pattern COMPONENT = Pattern.compile("\\s(\\w+)\\s*[,)]");
    private static final Pattern CONSTANT = Pattern.compile("[A-Z][A-Z0-9_]*");

    private static Set<String> literals;
    private static Set<String> components;
    private static Set<String> begun;

    @BeforeAll
    static void read() throws IOException {
        List<Path> sources = Stream.concat(files(WEB.resolve("jte")), java()).toList();
        literals = new HashSet<>();
        components = new HashSet<>();
        for (Path source : sources) {
            String text = Files.readString(source);
            LITERAL.matcher(text).results().forEach(found -> literals.add(found.group(1)));
            HEADER.matcher(text)
                    .results()
                    .forEach(header -> COMPONENT
                            .matcher(header.group(1))
                            .results()
                            .forEach(found -> components.add(found.group(1))));
        }
        begun = literals.stream()
                .filter(literal -> literal.matches("[a-z]+\\.[\\w.-]+[.-]"))
                .collect(Collectors.toSet());
    }

    private static Stream<Path> java() {
        return Modules.read().names().stream()
                .map(module -> Modules.read().folder(module).resolve("src/main/java"))
                .filter(Files::isDirectory)
                .flatMap(TextsInUseTest::files);
    }

    private static Stream<Path> files(Path folder) {
        try (Stream<Path> found = Files.walk(folder)) {
            return found.filter(Files::isRegularFile).toList().stream();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    @Test
    void every_text_is_shown_somewhere() {
        Set<String> dead = new TreeSet<>();
        int all = 0;
        for (Path file : files(WEB.resolve("resources/texts")).toList()) {
            String bundle = file.getFileName().toString().replace(".properties", "");
            for (String key : properties(file).stringPropertyNames()) {
                all++;
                if (!isUsed(bundle + "." + key)) {
                    dead.add(bundle + "." + key);
                }
            }
        }
        assertTrue(all > 1_500, all + " texts were read");
        assertEquals(Set.of(), dead);
    }

    @Test
    void a_text_that_nothing_shows_is_found() {
        assertFalse(isUsed("settings.nothing-shows-this"));
        assertFalse(isUsed("forms.name"), "no form is labeled by this bundle");
        assertFalse(isUsed("quotes.name.gone"));
    }

    /** Of two, the last is shown wherever either is meant. */
    @Test
    void every_key_stands_once() throws IOException {
        for (Path file : files(WEB.resolve("resources/texts")).toList()) {
            List<String> keys = Files.readAllLines(file).stream()
                    .filter(line -> line.matches("[\\w.-]+=.*"))
                    .map(line -> line.substring(0, line.indexOf('=')))
                    .toList();
            assertEquals(
                    List.of(),
                    keys.stream()
                            .filter(key -> Collections.frequency(keys, key) > 1)
                            .toList(),
                    file.toString());
            assertEquals(properties(file).size(), keys.size(), file + " is read by its lines");
        }
    }

    private static Properties properties(Path file) {
        Properties texts = new Properties();
        try (var reader = Files.newBufferedReader(file)) {
            texts.load(reader);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return texts;
    }

    private static boolean isUsed(String key) {
        int dot = key.lastIndexOf('.');
        String last = key.substring(dot + 1);
        boolean completed = CONSTANT.matcher(last).matches() && literals.contains(key.substring(0, dot));
        return literals.contains(key)
                || begun.stream().anyMatch(key::startsWith)
                || completed
                || isOfBundle(key) && (literals.contains("." + last) || isField(key));
    }

    /** Whether the key goes on from the name of a bundle or of a part of one, as lists and forms take it. */
    private static boolean isOfBundle(String key) {
        return key.startsWith("common.") || literals.stream().anyMatch(literal -> key.startsWith(literal + "."));
    }

    private static boolean isField(String key) {
        List<String> parts = Arrays.asList(key.split("\\."));
        int last = parts.size() - 1;
        while (last > 1
                && (Set.of("hint", "unit").contains(parts.get(last))
                        || CONSTANT.matcher(parts.get(last)).matches())) {
            last--;
        }
        return components.contains(parts.get(last)) || literals.contains(parts.get(last));
    }
}
