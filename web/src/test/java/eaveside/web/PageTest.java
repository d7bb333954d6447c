package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.importer.ClassFileImporter;
import com.tngtech.archunit.core.importer.ImportOption;
import eaveside.kernel.CamelCase;
import eaveside.web.settings.SettingsPages;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Test;

/** A page that does not say its template is shown by the one of its own name. */
class PageTest {
    @Test
    void a_page_is_shown_by_the_template_of_its_name() {
        assertEquals("settings/settings.jte", new SettingsPages.SettingsPage().template());
    }

    @Test
    void every_such_template_is_there() {
        List<String> named = new ClassFileImporter()
                .withImportOption(ImportOption.Predefined.DO_NOT_INCLUDE_TESTS).importPackages("eaveside.web").stream()
                        .filter(type -> type.isAssignableTo(Page.class) && !type.isInterface())
                        .filter(type -> type.getMethods().stream()
                                .noneMatch(method -> method.getName().equals("template")))
                        .map(PageTest::template)
                        .toList();
        assertTrue(named.size() > 5, named + " are named so");
        assertEquals(
                List.of(),
                named.stream()
                        .filter(path -> !Files.exists(Path.of("src/main/jte", path)))
                        .toList());
    }

    private static String template(JavaClass page) {
        String area = page.getPackageName().replaceFirst(".*\\.", "");
        return area + "/" + CamelCase.words(page.getSimpleName().replaceFirst("Page$", ""), "-") + ".jte";
    }
}
