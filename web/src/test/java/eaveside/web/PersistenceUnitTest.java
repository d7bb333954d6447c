package eaveside.web;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.testing.Entities;
import java.io.InputStream;
import java.util.TreeSet;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.junit.jupiter.api.Test;

/** The server only knows the persistent classes that are listed; the modules' own tests find them by themselves. */
class PersistenceUnitTest {
    @Test
    void every_persistent_class_of_the_modules_is_listed() throws Exception {
        TreeSet<String> listed = new TreeSet<>();
        try (InputStream in = getClass().getResourceAsStream("/META-INF/persistence.xml")) {
            Matcher matcher = Pattern.compile("<class>([^<]+)</class>").matcher(new String(in.readAllBytes()));
            while (matcher.find()) {
                listed.add(matcher.group(1));
            }
        }
        TreeSet<String> found = new TreeSet<>();
        Entities.all().stream()
                .map(Class::getName)
                .filter(name -> !name.contains(".planted.")) // what the rules of the structure are tried on
                .forEach(found::add);
        assertTrue(found.size() > 80, "only " + found.size() + " were found");
        assertEquals(String.join("\n", found), String.join("\n", listed));
    }
}
