package eaveside.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.io.Reader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Properties;
import java.util.Set;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** One thing has one word, on pages and in the code; what is listed here are words for things that have another. */
class WordsTest {
    /** In what people read. */
    private static final Pattern NOT_SAID = Pattern.compile(
            "\\b(?:visit sheets?|comes? back|book(?:ed)? again|unbilled|goodwill|getting in|offerings?|net of tax"
                    + "|what it comes to|time to pay|to the good|take back|pay back|credit notes?|cost documents?"
                    + "|really spent|module makers?|soap as mixed|in the books|how pressing|shut out|let in|who did what"
                    + "|person-minutes|labour|storeys?|tree surgeons?|work out|postal codes?|somebody|nobody|e-mail"
                    + "|litres?|metres?|colou?rs?|cancelled|organi[sz]ations?|below minimum|throw away)\\b",
            Pattern.CASE_INSENSITIVE);

    /** In the names of types and their constants, one word of the name or several. */
    private static final Pattern NOT_CALLED = Pattern.compile(
            "(?:Unbilled|Goodwill|Offering|CreditNote|VisitSheet|Labour|Storey|ModuleMaker|ScopeDifference|Shelf|Press"
                    + "|Takings|Aftermath|Untold|Likeness|Alike|Kind|Cancelled|Colour|Litre|Metre|Deeds|Whose|Standing)(?=$|[A-Z0-9_])"
                    + "|(?:^|_)(?:UNBILLED|GOODWILL|OFFERING|CREDIT_NOTE|VISIT_SHEET|LABOUR|STOREY|CANCELLED|LITRE|METRE)(?:_|$)");

    private static final Pattern TYPE = Pattern.compile("\\b(?:class|record|interface|enum) ([A-Z]\\w*)");

    private static final Pattern CONSTANT =
            Pattern.compile("(?<![\\w.\"'])([A-Z][A-Z0-9]*(?:_[A-Z0-9]+)+|[A-Z]{4,})(?![\\w\"'])");

    private static List<String> saidIn(String text) {
        return NOT_SAID.matcher(text).results().map(found -> found.group()).toList();
    }

    private static List<String> calledIn(String source) {
        return Stream.concat(
                        TYPE.matcher(source).results(), CONSTANT.matcher(source).results())
                .map(found -> found.group(1))
                .filter(name -> NOT_CALLED.matcher(name).find())
                .toList();
    }

    @Test
    void texts_say_the_words_of_the_glossary() throws IOException {
        List<String> others = new ArrayList<>();
        int read = 0;
        for (Path file : files(Modules.ROOT.resolve("web/src/main/resources/texts"))) {
            Properties texts = new Properties();
            try (Reader reader = Files.newBufferedReader(file)) {
                texts.load(reader);
            }
            read += texts.size();
            texts.forEach((key, text) ->
                    saidIn(text.toString()).forEach(word -> others.add(file.getFileName() + " " + key + ": " + word)));
        }
        assertTrue(read > 1_500, read + " texts were read");
        assertEquals(List.of(), others);
    }

    @Test
    void types_and_constants_are_called_by_the_words_of_the_glossary() throws IOException {
        List<String> others = new ArrayList<>();
        int read = 0;
        for (String module : Modules.read().names()) {
            if (Set.of("deploy", "testing").contains(module)) {
                continue;
            }
            for (Path source : Modules.read().sources(module)) {
                read++;
                calledIn(Files.readString(source)).forEach(name -> others.add(source.getFileName() + ": " + name));
            }
        }
        assertTrue(read > 700, read + " sources were read");
        assertEquals(List.of(), others);
    }

    private static List<Path> files(Path folder) throws IOException {
        try (Stream<Path> found = Files.walk(folder)) {
            return found.filter(Files::isRegularFile).sorted().toList();
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "Unbilled visit",
                "{0} ({1} in the books)",
                "The storey is missing",
                "Close it as goodwill",
                "No credit note yet"
            })
    void another_word_in_a_text_is_found(String text) {
        assertEquals(1, saidIn(text).size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "public class CloseUnbilled {",
                "record OfferingId(UUID value) {",
                "enum A {\n    OPEN,\n    CLOSED_UNBILLED\n}",
                "enum A { OPEN, UNBILLED_VISIT }",
                "private static final String GOODWILL = \"\";",
                "interface SurfaceKind {"
            })
    void another_word_in_a_name_is_found(String source) {
        assertEquals(1, calledIn(source).size());
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"public class PressureLimit {", "record Offer(UUID value) {", "enum A {\n    KIND_WORDS\n}"})
    void a_word_that_only_begins_alike_is_not(String source) {
        assertEquals(List.of(), calledIn(source));
    }
}
