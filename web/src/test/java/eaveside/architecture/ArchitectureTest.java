package eaveside.architecture;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;
import org.junit.jupiter.params.provider.ValueSource;

/** Holds the code to its design; each rule is shown to fail on a violation planted beside this test. */
@Tag("once")
class ArchitectureTest {
    private static final String PLANTED = "eaveside.architecture.planted";

    private static JavaClasses code;
    private static JavaClasses templates;
    private static JavaClasses planted;

    @BeforeAll
    static void read() {
        code = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .withImportOption(
                        location -> !location.contains("/templates/") && !location.contains("eaveside-testing"))
                .importPackages("eaveside");
        templates = new ClassFileImporter().importPackages("eaveside.web.templates");
        planted = new ClassFileImporter().importPackages(PLANTED);
    }

    /** By its sources: what is not read cannot break a rule. */
    @Test
    void the_whole_program_was_read() {
        Set<String> read = code.stream().map(JavaClass::getName).collect(Collectors.toSet());
        List<String> missing = new ArrayList<>();
        for (String module : Modules.read().names()) {
            if (LATER.contains(module)) {
                continue;
            }
            Path java = Modules.read().folder(module).resolve("src/main/java");
            for (Path source : Modules.read().sources(module)) {
                String name =
                        java.relativize(source).toString().replace(".java", "").replace(File.separatorChar, '.');
                if (!name.endsWith("package-info") && !read.contains(name)) {
                    missing.add(name);
                }
            }
        }
        assertEquals(List.of(), missing);
        assertTrue(code.size() > 1_500, code.size() + " classes were read");
    }

    /** Not on the way of this module's tests: it is built after it, and what tests run on is no part of the program. */
    private static final Set<String> LATER = Set.of("deploy", "testing");

    /** The picture is drawn from the POMs; {@code -Dpicture.write=true} draws it anew. */
    @Test
    void the_picture_of_the_modules_is_true() throws IOException {
        Path picture = Modules.ROOT.resolve(".pictures/modules.svg");
        String drawn = ModulePicture.of(Modules.read());
        if (Boolean.getBoolean("picture.write")) {
            Files.writeString(picture, drawn);
        }
        assertEquals(Files.readString(picture), drawn, "draw the picture anew with -Dpicture.write=true");
    }

    /** What a template computes is compiled apart from the program. */
    @Test
    void templates_ask_no_clock_of_their_own() {
        assertTrue(templates.size() > 100, templates.size() + " templates were read");
        Rules.timeComesFromAClock().check(templates);
    }

    static Stream<Arguments> rules() {
        return Stream.of(
                Arguments.of(
                        "modules lean on their POMs",
                        Rules.modulesLeanOnTheirPoms("eaveside"),
                        Rules.modulesLeanOnTheirPoms(PLANTED)),
                Arguments.of(
                        "internal is private", Rules.internalIsPrivate("eaveside"), Rules.internalIsPrivate(PLANTED)),
                Arguments.of(
                        "internals never lean on what leans on them",
                        Rooms.internalsNeverLeanOnWhatLeansOnThem("eaveside"),
                        Rooms.internalsNeverLeanOnWhatLeansOnThem(PLANTED)),
                Arguments.of(
                        "internals are private to their package",
                        Rooms.internalsArePrivateToTheirPackage("eaveside"),
                        Rooms.internalsArePrivateToTheirPackage(PLANTED)),
                Arguments.of(
                        "shared classes hold only their parts",
                        Shares.sharedHoldOnlyTheirParts(),
                        Shares.sharedHoldOnlyTheirParts()),
                Arguments.of(
                        "what is given its parts is shared",
                        Shares.whatIsGivenItsPartsIsShared("eaveside"),
                        Shares.whatIsGivenItsPartsIsShared(PLANTED)),
                Arguments.of("deeds are told", Rooms.deedsAreTold("eaveside"), Rooms.deedsAreTold(PLANTED)),
                Arguments.of("decisions are plain", Rules.decisionsArePlain(), Rules.decisionsArePlain()),
                Arguments.of(
                        "transactions only at use cases",
                        Rules.transactionsOnlyAtUseCases("eaveside"),
                        Rules.transactionsOnlyAtUseCases(PLANTED)),
                Arguments.of("time comes from a clock", Rules.timeComesFromAClock(), Rules.timeComesFromAClock()),
                Arguments.of(
                        "every address says who may call",
                        Rules.everyAddressSaysWhoMayCall(),
                        Rules.everyAddressSaysWhoMayCall()),
                Arguments.of(
                        "addresses are resources",
                        Rules.addressesAreResources("eaveside"),
                        Rules.addressesAreResources(PLANTED)),
                Arguments.of(
                        "plain classes are marked as decisions",
                        Rules.plainClassesAreMarked("eaveside"),
                        Rules.plainClassesAreMarked(PLANTED)),
                Arguments.of(
                        "nothing travels naked",
                        Rules.nothingTravelsNaked("eaveside"),
                        Rules.nothingTravelsNaked(PLANTED)),
                Arguments.of(
                        "rows hold ids typed", Rules.rowsHoldIdsTyped("eaveside"), Rules.rowsHoldIdsTyped(PLANTED)));
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rules")
    void holds(String name, ArchRule rule, ArchRule onPlanted) {
        rule.check(code);
    }

    @ParameterizedTest(name = "{0}")
    @MethodSource("rules")
    void fails_where_it_is_broken(String name, ArchRule rule, ArchRule onPlanted) {
        assertThrows(AssertionError.class, () -> onPlanted.check(planted));
    }

    private static String brokenBy(ArchRule rule) {
        return rule.evaluate(planted).getFailureReport().toString();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "day",
                "dayThere",
                "byReference",
                "hour",
                "zoned",
                "offset",
                "month",
                "clock",
                "clockByReference",
                "ticking",
                "millis",
                "date",
                "calendar",
                "gregorian"
            })
    void every_way_to_ask_the_machine_for_the_time_is_found(String method) {
        String broken = brokenBy(Rules.timeComesFromAClock());
        assertTrue(broken.contains("AsksTheMachine." + method + "("), broken);
    }

    @Test
    void the_clock_that_was_given_may_be_asked() {
        assertFalse(brokenBy(Rules.timeComesFromAClock()).contains("AsksTheMachine.right("));
    }

    @Test
    void what_answers_beside_the_resources_is_found() {
        String broken = brokenBy(Rules.addressesAreResources(PLANTED));
        assertTrue(broken.contains("AnswersBeside is a servlet"), broken);
        assertTrue(broken.contains("AnswersBeside.further("), broken);
        assertFalse(broken.contains("AnswersBeside.right("), broken);
    }

    @Test
    void what_a_shared_class_remembers_is_found_and_its_parts_are_not() {
        String broken = brokenBy(Shares.sharedHoldOnlyTheirParts());
        assertTrue(broken.contains("Remembers.last") && broken.contains("Remembers.said"), broken);
        assertFalse(broken.contains("Remembers.part"), broken);
        String anew = brokenBy(Shares.whatIsGivenItsPartsIsShared(PLANTED));
        assertTrue(anew.contains("MadeAnew"), anew);
    }

    @ParameterizedTest
    @ValueSource(strings = {"customer", "invoiceId", "paid", "amount", "quantity", "weight", "rate"})
    void every_value_without_its_type_is_found(String field) {
        String broken = brokenBy(Rules.nothingTravelsNaked(PLANTED));
        assertTrue(broken.contains("BareValues." + field), broken);
        assertFalse(broken.contains("BareValues.lines"), broken);
    }
}
