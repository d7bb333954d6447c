package eaveside.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.junit.jupiter.api.Test;

/**
 * The table of the security standard is complete, and true to the tests and sections that it names.
 *
 * <p>Source: OWASP Foundation, Application Security Verification Standard 5.0.0, 2025: chapters V1 to V17 have 70
 * requirements of level 1 and 183 of level 2.
 */
class AsvsTest {
    private static final Path DEPLOY = Modules.ROOT.resolve("deploy");

    /** How many requirements of levels 1 and 2 each chapter of the standard has. */
    private static final Map<String, List<Integer>> CHAPTERS = Map.ofEntries(
            Map.entry("V1", List.of(8, 19)),
            Map.entry("V2", List.of(4, 7)),
            Map.entry("V3", List.of(8, 11)),
            Map.entry("V4", List.of(2, 8)),
            Map.entry("V5", List.of(4, 5)),
            Map.entry("V6", List.of(13, 22)),
            Map.entry("V7", List.of(6, 12)),
            Map.entry("V8", List.of(4, 3)),
            Map.entry("V9", List.of(4, 3)),
            Map.entry("V10", List.of(5, 24)),
            Map.entry("V11", List.of(3, 11)),
            Map.entry("V12", List.of(3, 6)),
            Map.entry("V13", List.of(1, 12)),
            Map.entry("V14", List.of(2, 7)),
            Map.entry("V15", List.of(3, 10)),
            Map.entry("V16", List.of(0, 16)),
            Map.entry("V17", List.of(0, 7)));

    private static List<CSVRecord> table() throws IOException {
        CSVFormat format = CSVFormat.RFC4180
                .builder()
                .setHeader()
                .setSkipHeaderRecord(true)
                .get();
        try (Reader file = Files.newBufferedReader(DEPLOY.resolve("asvs.csv"));
                CSVParser parser = CSVParser.parse(file, format)) {
            return parser.getRecords();
        }
    }

    @Test
    void every_requirement_of_levels_one_and_two_stands_there_once() throws IOException {
        Map<String, List<Integer>> counted = new HashMap<>();
        Set<String> seen = new HashSet<>();
        for (CSVRecord row : table()) {
            assertEquals(true, seen.add(row.get("requirement")), row.get("requirement") + " twice");
            String chapter = row.get("requirement").replaceFirst("\\..*", "");
            boolean first = row.get("level").equals("1");
            counted.merge(
                    chapter,
                    List.of(first ? 1 : 0, first ? 0 : 1),
                    (a, b) -> List.of(a.get(0) + b.get(0), a.get(1) + b.get(1)));
        }
        assertEquals(CHAPTERS, counted);
    }

    @Test
    void whatever_is_named_is_there() throws IOException {
        Map<String, String> tests = tests();
        String page = Files.readString(DEPLOY.resolve("security.md"));
        List<String> wrong = new ArrayList<>();
        for (CSVRecord row : table()) {
            String fault = fault(row, tests, page);
            if (!fault.isEmpty()) {
                wrong.add(row.get("requirement") + ": " + fault);
            }
        }
        assertEquals(List.of(), wrong);
    }

    /** What is wrong with a row; empty where nothing is. */
    private static String fault(CSVRecord row, Map<String, String> tests, String page) {
        String where = row.get("where");
        return switch (row.get("shown by")) {
            case "test" -> {
                String[] named = where.split("\\.", 2);
                String source = tests.get(named[0]);
                yield source == null
                        ? "there is no test " + named[0]
                        : named.length == 1 && !source.contains("@Test\n") && !source.contains("@ParameterizedTest")
                                ? named[0] + " tests nothing"
                                : named.length > 1 && !isRun(source, named[1])
                                        ? named[0] + " has no " + named[1]
                                        : row.get("what").isBlank() ? "does not say what" : "";
            }
            case "document" -> page.contains("\n## " + where + "\n") ? "" : "no section " + where;
            case "absent", "reason" -> row.get("what").isBlank() ? "gives no reason" : "";
            default -> "shown by " + row.get("shown by");
        };
    }

    /** Whether the lines above the method, up to the empty one before it, say that it is a test. */
    private static boolean isRun(String source, String test) {
        int at = source.indexOf("void " + test + "(");
        String above = at < 0 ? "" : source.substring(Math.max(0, source.lastIndexOf("\n\n", at)), at);
        return (above.contains("@Test\n") || above.contains("@ParameterizedTest")) && !source.contains("@Disabled");
    }

    @Test
    void what_no_run_calls_shows_nothing() {
        String source = "\n\n    @Test\n    void a() {\n        b();\n    }\n\n    void b() {}\n";
        assertTrue(isRun(source, "a"));
        assertFalse(isRun(source, "b"));
        assertFalse(isRun(source, "c"));
        assertFalse(isRun(source.replace("@Test", "@Test\n    @Disabled"), "a"));
    }

    /** The sources of the tests of every module, by the names of their classes. */
    private static Map<String, String> tests() throws IOException {
        Map<String, String> tests = new HashMap<>();
        try (Stream<Path> files = Files.walk(Modules.ROOT)) {
            files.filter(file -> file.toString().matches(".*/src/test/java/.*(Test|IT)\\.java"))
                    .forEach(file -> {
                        try {
                            tests.put(file.getFileName().toString().replace(".java", ""), Files.readString(file));
                        } catch (IOException e) {
                            throw new UncheckedIOException(e);
                        }
                    });
        }
        return tests;
    }
}
