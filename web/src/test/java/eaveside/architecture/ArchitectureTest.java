package eaveside.architecture;

import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClasses;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import com.tngtech.archunit.lang.ArchRule;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.Arguments;
import org.junit.jupiter.params.provider.MethodSource;

/** Holds the code to its design; each rule is shown to fail on a violation planted beside this test. */
class ArchitectureTest {
    private static final String PLANTED = "eaveside.architecture.planted";

    private static JavaClasses code;
    private static JavaClasses planted;

    @BeforeAll
    static void read() {
        code = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS)
                .withImportOption(
                        location -> !location.contains("/templates/") && !location.contains("eaveside-testing"))
                .importPackages("eaveside");
        planted = new ClassFileImporter().importPackages(PLANTED);
    }

    @Test
    void the_whole_program_was_read() {
        assertTrue(code.size() > 400, "only " + code.size() + " classes were read");
        for (String module : Rules.MODULES.subList(0, Rules.MODULES.indexOf("deploy"))) {
            assertTrue(
                    code.stream().anyMatch(c -> c.getPackageName().startsWith("eaveside." + module)),
                    "nothing of " + module + " was read");
        }
    }

    static Stream<Arguments> rules() {
        return Stream.of(
                Arguments.of("modules lean left", Rules.modulesLeanLeft("eaveside"), Rules.modulesLeanLeft(PLANTED)),
                Arguments.of(
                        "internal is private", Rules.internalIsPrivate("eaveside"), Rules.internalIsPrivate(PLANTED)),
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
                        "no binary floating point in contracts",
                        Rules.nothingTravelsNaked("eaveside"),
                        Rules.nothingTravelsNaked(PLANTED)));
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
}
