package eaveside.access;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTrue;

import com.nulabinc.zxcvbn.Zxcvbn;
import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStreamReader;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;

class PasswordRulesTest {
    /** 128 code points. */
    private static final String LONG = "Under the eaves a heron counted seventeen copper kettles, "
            + "sold nine of them to a passing cartographer and kept the rest polished";

    @Test
    void length_counts_code_points() {
        assertThrows(AccessRefusal.WeakPassword.class, () -> new NewPassword("14 characters."));
        new NewPassword("15 odd sandals.");
        assertThrows(AccessRefusal.WeakPassword.class, () -> new NewPassword("😀😁😂🤣😃😄😅😆"));
        new NewPassword("😀😁😂🤣😃😄😅😆😉😊😋😎😍😘🥰");
        new NewPassword(LONG);
        assertThrows(AccessRefusal.WeakPassword.class, () -> new NewPassword(LONG + "x"));
    }

    @Test
    void what_is_easily_guessed_is_refused() {
        for (String weak : List.of(
                "aaaaaaaaaaaaaaaaaaaa",
                "abababababababababab",
                "123456789012345678",
                "abcdefghijklmnopqrst",
                "zyxwvutsrqponmlkjih",
                "               ")) {
            assertThrows(AccessRefusal.WeakPassword.class, () -> new NewPassword(weak), weak);
        }
        NewPassword password = new NewPassword("mandy.gutter2026");
        assertThrows(
                AccessRefusal.WeakPassword.class,
                () -> password.requireUnlike(new Username("mandy.gutter"), "Someone"));
        assertThrows(
                AccessRefusal.WeakPassword.class, () -> password.requireUnlike(new Username("mg"), "Mandy.Gutter"));
        password.requireUnlike(new Username("mg"), "Mo");
    }

    /** NIST SP 800-63B-4, 3.1.1.2: common values, repetitions and sequences, words of the service, the company and the user. */
    @Test
    void what_a_guesser_tries_first_is_refused() {
        for (String weak : List.of(
                "passwordpassword",
                "Password12345678",
                "qwertyuiopasdfgh",
                "iloveyouiloveyou",
                "letmeinletmeinletmein",
                "summer2026summer2026",
                "administrator1234",
                "windowcleaning2026",
                "eavesideeaveside1",
                "Roof cleaning 2026!",
                "gutter gutter gutter gutter")) {
            assertThrows(AccessRefusal.WeakPassword.class, () -> new NewPassword(weak), weak);
        }
        Username username = new Username("mg");
        NewPassword ofCompany = new NewPassword("larchmontandpinnock");
        ofCompany.requireUnlike(username, "Mo", List.of("Other Company"));
        assertThrows(
                AccessRefusal.WeakPassword.class,
                () -> ofCompany.requireUnlike(username, "Mo", List.of("Larchmont and Pinnock")));
        for (String spaced : List.of(
                "Larchmont Pinnock 26!", "Larchmont-and-Pinnock", "larchmontpinnockroof1", "Welcome to Larchmont")) {
            assertThrows(
                    AccessRefusal.WeakPassword.class,
                    () -> new NewPassword(spaced).requireUnlike(username, "Mo", List.of("Larchmont and Pinnock")),
                    spaced);
        }
    }

    /**
     * OWASP ASVS 5.0.0, V6.2.4. Of the most frequent passwords hardly any is as long as ours must be: what is left of them is written
     * as often as it takes. Source: the list of frequencies of zxcvbn, most frequent first.
     */
    @Test
    void the_three_thousand_most_frequent_are_refused_however_often_they_are_repeated() throws IOException {
        List<String> frequent;
        try (var list = new BufferedReader(new InputStreamReader(
                Zxcvbn.class.getResourceAsStream("matchers/dictionaries/passwords.txt"), StandardCharsets.UTF_8))) {
            frequent = list.lines().limit(3_000).toList();
        }
        assertEquals(3_000, frequent.size());
        List<String> taken = new ArrayList<>();
        for (String password : frequent) {
            String repeated = password.repeat((14 + password.length()) / password.length());
            try {
                new NewPassword(repeated);
                taken.add(repeated);
            } catch (AccessRefusal.WeakPassword e) {
                // As it should be.
            }
        }
        assertEquals(List.of(), taken);
    }

    /** NIST SP 800-63B-4, 3.1.1.2: no rules of composition, any printing characters, blanks and Unicode. */
    @Test
    void any_kinds_of_characters_will_do() {
        for (String fine : List.of(
                "mossy lantern hovers twice",
                "MOSSYLANTERNHOVERS",
                "8305719264803957",
                "~!@#)(*&^%{}|:\"<>",
                "dachrinnenschlüsselbund",
                "сиреневыйтуманнадкрышей",
                "屋根の上の青い鳥が三羽歌っている朝")) {
            new NewPassword(fine);
        }
    }

    /** Signs that can each be read as several letters; the whole took the estimate five seconds. */
    @Test
    void the_hardest_text_to_measure_is_measured_soon() {
        String hard = "4@8({[<369&#!1/|0$5+7%2".repeat(6).substring(0, NewPassword.LONGEST);
        long begun = System.nanoTime();
        for (int i = 0; i < 4; i++) {
            new NewPassword(hard.substring(i) + "x".repeat(i));
        }
        long millis = (System.nanoTime() - begun) / 1_000_000;
        assertTrue(millis < 6_000, millis + " ms for four");
    }

    @Test
    void blanks_are_part_of_the_password() {
        assertTrue(java.util.Arrays.equals(
                "  four plain words  ".toCharArray(), new NewPassword("  four plain words  ").characters()));
    }

    @Test
    void generated_passwords_are_new_and_good_enough() {
        GeneratePassword generate = new GeneratePassword();
        Set<String> generated = Stream.generate(generate::generate).limit(1000).collect(Collectors.toSet());
        assertEquals(1000, generated.size());
        for (String password : generated) {
            assertTrue(
                    password.matches("([bdfghjklmnprstvz][aiou]){2}[bdfghjklmnprstvz](-([bdfghjklmnprstvz][aiou])"
                            + "{2}[bdfghjklmnprstvz]){3}"),
                    password);
        }
        // Each of 16 consonants and 4 vowels at each place: (3 × 4 + 2 × 2) bits in each of 4 words.
        for (int place = 0; place < 23; place++) {
            int at = place;
            long different =
                    generated.stream().map(p -> p.charAt(at)).distinct().count();
            assertEquals(at % 6 == 5 ? 1 : at % 6 % 2 == 0 ? 16 : 4, different, "place " + at);
        }
        generated.stream().limit(100).forEach(NewPassword::new);
    }

    @Test
    void a_username_is_plain_and_lower_case() {
        assertEquals("mandy@example.com", new Username(" Mandy@Example.com ").value());
        for (String bad : List.of("", "x", "-x", "two words", "näme", "x".repeat(65), "a\0b")) {
            assertThrows(AccessRefusal.BadUsername.class, () -> new Username(bad), bad);
            assertTrue(Username.typed(bad).isEmpty());
        }
    }

    @Test
    void a_line_for_the_audit_log_is_clipped_rather_than_refused() {
        AuditEvent event =
                AuditEvent.refused("page.open", null, "/".repeat(300)).with("a\0b");
        assertEquals(200, event.subject().length());
        assertEquals("a\uFFFDb", event.detail());
        assertThrows(AccessRefusal.BadAction.class, () -> AuditEvent.done("Not An Action", null, ""));
    }

    @Test
    void refusals_have_stable_codes() {
        assertEquals("access.wrong-credentials", new AccessRefusal.WrongCredentials().code());
        assertEquals(List.of("username", "password"), new AccessRefusal.WrongCredentials().fields());
    }
}
