package eaveside.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/**
 * Figures from outside must be findable: each test of a class named {@code …PublishedExamples…} says in its Javadoc, or
 * its class does for all, where they stand: "Source: author or body, title, section, year or edition", or that they are
 * common practice, from memory, or computed. The year is the source's own; where it has none, "undated" and the day of
 * reading stand for it. Tests of the program's own behavior that stand beside them say "No outside figure".
 */
class PublishedSourcesTest {
    private static final Pattern TEST = Pattern.compile(
            "(?:/\\*\\*(?<doc>(?:(?!\\*/).)*)\\*/\\s*)?@(?:Parameterized)?Test\\b.*?\\bvoid (?<name>\\w+)\\(",
            Pattern.DOTALL);
    private static final Pattern CLASS =
            Pattern.compile("/\\*\\*(?<doc>(?:(?!\\*/).)*)\\*/\\s*(?:public )?(?:final )?class ", Pattern.DOTALL);
    private static final Pattern SOURCE = Pattern.compile(
            "Source: [^,]{3,}, .*?\\b(?:(?:19|20)\\d\\d|\\d+(?:st|nd|rd|th) edition)\\b", Pattern.DOTALL);
    private static final Pattern UNDATED = Pattern.compile("Source: [^,]{3,}, .*?\\bundated\\b", Pattern.DOTALL);
    private static final Pattern EACH_SOURCE = Pattern.compile("(?=Source: )");

    /** The day on which somebody read a source, which says nothing about when it was published. */
    private static final Pattern READ = Pattern.compile(
            "\\b(?:read|accessed|retrieved|visited)\\b:?\\s+"
                    + "(?:(?:in|on|of|(?:jan|feb|mar|apr|may|jun|jul|aug|sep|oct|nov|dec)[a-z]*"
                    + "|\\d{1,2}(?:st|nd|rd|th)?)[ ,./-]*)*(?:19|20)\\d\\d(?:-\\d\\d)*\\b",
            Pattern.CASE_INSENSITIVE);

    private static final Pattern MARK = Pattern.compile("Common practice, no source|From memory|No outside figure");

    /** What says nothing that anybody could find. */
    private static final Pattern VAGUE = Pattern.compile(
            "\\b(?:trade (?:article|leaflet|page)s?|supplier's faq|manufacturer's page|state bulletin|retail table"
                    + "|(?:file|section|page|title|author) not noted|without author)\\b");

    /** Pages of shops, and copies of others' papers: neither says who first wrote a figure, and both come and go. */
    private static final Pattern SHOP = Pattern.compile(
            "\\b(?:brrinc|h2odistributors|durpro|spectrapure|chemaqua|waxie|stason|tularc|docslib|docstoc|docplayer"
                    + "|studylib|scribd)\\b");

    private static Path root() {
        Path folder = Path.of("").toAbsolutePath();
        while (!Files.exists(folder.resolve("DEVELOPERS.md"))) {
            folder = folder.getParent();
        }
        return folder;
    }

    private static List<Path> classes() throws IOException {
        try (Stream<Path> files = Files.walk(root())) {
            return files.filter(f -> f.toString().contains("/src/test/java/"))
                    .filter(f -> f.getFileName().toString().matches(".*PublishedExamples.*\\.java"))
                    .sorted()
                    .toList();
        }
    }

    /** The tests of a source text that do not say where their figures come from. */
    private static List<String> unsourced(String text) {
        Matcher type = CLASS.matcher(text);
        boolean all = type.find() && sourced(type.group("doc"));
        List<String> without = new ArrayList<>();
        Matcher test = TEST.matcher(text);
        while (test.find()) {
            String doc = test.group("doc");
            if (!(doc == null ? all : sourced(doc))) {
                without.add(test.group("name"));
            }
        }
        return without;
    }

    private static boolean sourced(String javadoc) {
        String plain = javadoc.replaceAll("\\s*\\n\\s*\\*\\s?", " ");
        String lower = plain.toLowerCase(Locale.ROOT);
        List<String> sources = EACH_SOURCE
                .splitAsStream(plain)
                .filter(part -> part.startsWith("Source: "))
                .toList();
        return !VAGUE.matcher(lower).find()
                && !SHOP.matcher(lower).find()
                && sources.stream().allMatch(PublishedSourcesTest::findable)
                && (!sources.isEmpty() || MARK.matcher(plain).find());
    }

    private static boolean findable(String source) {
        Matcher read = READ.matcher(source);
        return read.find() && UNDATED.matcher(source).find()
                || SOURCE.matcher(read.replaceAll("")).find();
    }

    @Test
    void every_published_figure_says_where_it_stands() throws IOException {
        List<Path> classes = classes();
        assertTrue(classes.size() >= 12, "only " + classes.size() + " classes of published figures were found");
        List<String> without = new ArrayList<>();
        for (Path file : classes) {
            String text = Files.readString(file);
            assertTrue(TEST.matcher(text).find(), "no test was read in " + file);
            unsourced(text).forEach(test -> without.add(file.getFileName() + ": " + test));
        }
        assertEquals(List.of(), without);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "@Test void a() {",
                "/** A trade article on dilution: 8 : 1. */ @Test void a() {",
                "/** Source: a trade article, on dilution, 2019. */ @Test void a() {",
                "/** Source: a supplier's FAQ, on resin, 2019. */ @Test void a() {",
                "/** Source: somebody's memory. */ @Test void a() {",
                "/** Source: OpenStax, Principles of Accounting. */ @Test void a() {",
                "/** Source: OpenStax, Principles of Accounting (section not noted), 2019. */ @Test void a() {",
                "/** Source: Trade Board, Dilution (read in 2026): 8 : 1. */ @Test void a() {",
                "/** Source: Trade Board, Dilution, read on May 3, 2026: 8 : 1. */ @Test void a() {",
                "/** Source: Trade Board, Dilution, accessed 2026-05-03: 8 : 1. */ @Test void a() {",
                "/** Source: Trade Board, Dilution. Retrieved: 3rd of May 2026. 8 : 1. */ @Test void a() {",
                "/**\n * Source: Trade Board, Dilution, visited\n * in 2026: 8 : 1.\n */\n@Test void a() {",
                "/** Source: Trade Board, Dilution (undated): 8 : 1. */ @Test void a() {",
                "/** Source: Trade Board, Dilution, 2019. <p>Source: Trade Board, Foam. */ @Test void a() {",
                "/** Source: Trade Board, Foam, read in 2026. <p>Source: Trade Board, Resin, 2019. */ @Test void a() {",
                "/** Source: Trade Board, Hardness, 2019 (copied at h2odistributors.com). */ @Test void a() {",
                "/** Source: brrinc.org, Markup (undated, read in 2026). */ @Test void a() {",
                "/** Common practice, no source: so also at Stason.org. */ @Test void a() {",
                "/** Source: OpenStax, Principles of Accounting, 2019. */ class B { /** Computed. */ @Test void a() {"
            })
    void a_test_without_a_source_is_named(String text) {
        assertEquals(List.of("a"), unsourced(text));
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "/** Source: OpenStax, Principles of Accounting, Volume 1 (2019), §3.6. */ @Test void a() {",
                "/**\n * Source: OpenStax,\n * Principles of Accounting, 2019.\n */\n@ParameterizedTest\n@CsvSource({\"1\"})\nvoid a(int b) {",
                "/** Source: OpenStax, Principles of Accounting (2019; read in 2026), §3.6. */ @Test void a() {",
                "/** Source: Trade Board, Dilution (read in 2026), 2nd edition. */ @Test void a() {",
                "/** Source: Trade Board, Dilution (undated in the copy read in 2026): 8 : 1. */ @Test void a() {",
                "/** Source: Trade Board, Dilution, 2019. <p>Source: Trade Board, Foam, 2020. */ @Test void a() {",
                "/** Common practice, no source: 8 : 1. */ @Test void a() {",
                "/** Source: OpenStax, Principles of Accounting, 2019. */ class B { @Test void a() {"
            })
    void a_test_with_one_is_not(String text) {
        assertEquals(List.of(), unsourced(text));
    }
}
