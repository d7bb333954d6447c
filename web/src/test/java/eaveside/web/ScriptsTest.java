package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** Our scripts set texts and never make markup or code of them. What comes as markup comes from the server, which has escaped it. */
class ScriptsTest {
    private static final Path SCRIPTS = Path.of("src/main/resources/assets");

    private static final Pattern UNSAFE = Pattern.compile(
            "innerHTML|outerHTML|insertAdjacentHTML|document\\.write|\\beval\\(|new Function|createContextualFragment"
                    + "|srcdoc|DOMParser|set(?:Timeout|Interval)\\(['\"`]|javascript:");

    @Test
    void set_texts_alone() throws IOException {
        List<String> unsafe = new ArrayList<>();
        int read = 0;
        try (var files = Files.list(SCRIPTS)) {
            for (Path file : files.filter(file -> file.toString().matches(".*(?<!\\.min)\\.js"))
                    .toList()) {
                Matcher found = UNSAFE.matcher(Files.readString(file));
                while (found.find()) {
                    unsafe.add(file.getFileName() + ": " + found.group());
                }
                read++;
            }
        }
        assertEquals(List.of(), unsafe);
        assertTrue(read > 4, read + " scripts");
        assertTrue(UNSAFE.matcher("box.innerHTML = typed").find());
    }
}
