package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Somebody answers the questions of the first start. */
@Tag("long")
class FirstStartIT {
    @TempDir
    Path folder;

    @Test
    void a_company_is_made_of_the_answers_that_are_typed() throws Exception {
        Path data = folder.resolve("data");
        try (Launched eaveside = Launched.company(
                data,
                "Typed Cleaning",
                "Atlantis",
                "US",
                "Dollars",
                "USD",
                "Atlantis/Center",
                "UTC",
                "Typed Owner",
                "typed",
                "too short",
                "several words that are typed",
                "several words that are typed")) {
            assertEquals(200, eaveside.status("sign-in"));
            assertTrue(eaveside.said().contains("Name of the company"));
            for (String told :
                    List.of("Atlantis is not known", "Dollars is not known", "Center is not known", "too short")) {
                assertTrue(eaveside.said().contains(told), "asked again at once: " + told);
            }
            Path console = data.resolve("log/console.log");
            String before = Files.readString(console);
            assertFalse(before.isBlank(), "the server's own start is there");
            Process one = eaveside.begin("recover", "--username", "typed");
            Process other = eaveside.begin("recover", "--username", "typed");
            assertEquals(List.of(0, 0), List.of(one.waitFor(), other.waitFor()), "one after the other");
            assertEquals(0, eaveside.run("verify"), "the books hold");
            assertTrue(Files.readString(console).startsWith(before), "what the server said is still there");
        }
    }
}
