package eaveside.web.forms;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertThrows;
import static org.junit.jupiter.api.Assertions.assertTimeoutPreemptively;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.kernel.Refusal;
import eaveside.web.Notation;
import java.io.ByteArrayInputStream;
import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.List;
import java.util.Locale;
import java.util.SplittableRandom;
import org.joda.money.CurrencyUnit;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** What scripts and people type: read or refused, and soon. */
class ParsersFuzzTest {
    private static final long SEED = Long.getLong("eaveside.seed", 20_261_128L);
    private static final Duration SOON = Duration.ofSeconds(5);

    private static void read(byte[] body, String at) {
        try {
            JsonBodies.parsed(new ByteArrayInputStream(body));
        } catch (Refusal refusal) {
            assertTrue(!refusal.text().isBlank(), at);
        } catch (IOException | RuntimeException | StackOverflowError e) {
            throw new AssertionError(at, e);
        }
    }

    /** The first once kept a thread of the server for ever: the parser looked for its end past the end of the body. */
    @ParameterizedTest
    @ValueSource(
            strings = {
                "{\"x\":[",
                "{\"x\":[1,",
                "{\"x\":{",
                "{\"x\":",
                "{\"x",
                "{",
                "[",
                "[]",
                "\"",
                "{}{}",
                "{} x",
                "{}]",
                "{\"x\":1,\"x\":2}",
                "{\"x\":{\"y\":1,\"y\":1}}",
                "{x:1}",
                "{'x':1}",
                "{\"x\":01}",
                "{\"x\":1e}",
                "{\"x\":NaN}",
                "{\"x\":\"\\u12\"}",
                "{\"x\":1,}",
                "nul",
                "null",
                "1",
            })
    void what_is_no_object_is_refused(String body) {
        assertTimeoutPreemptively(SOON, () -> {
            assertThrows(
                    Refusal.class,
                    () -> JsonBodies.parsed(new ByteArrayInputStream(body.getBytes(StandardCharsets.UTF_8))));
        });
    }

    @Test
    void large_bodies_take_no_time() {
        for (String body : List.of(
                "{\"x\":" + "9".repeat(10_000_000) + "}",
                "{\"x\":0." + "9".repeat(10_000_000) + "}",
                "{\"x\":" + "[".repeat(5_000_000),
                "{\"x\":" + "{\"x\":".repeat(1_000_000),
                "{\"x\":\"" + "\\\\".repeat(5_000_000),
                "{\"x\":\"" + "a".repeat(10_000_000) + "\"}",
                " ".repeat(11_000_000),
                "{\"x\":[" + "1,".repeat(4_000_000))) {
            assertTimeoutPreemptively(SOON, () -> read(body.getBytes(StandardCharsets.UTF_8), body.substring(0, 9)));
        }
    }

    @Test
    void a_number_has_at_most_forty_digits() throws IOException {
        for (String fine : List.of(
                "1".repeat(40),
                "\"" + "1".repeat(400) + "\"",
                "0." + "1".repeat(39),
                "\"\\\"" + "1".repeat(60) + "\"")) {
            assertEquals(
                    1,
                    JsonBodies.parsed(
                                    new ByteArrayInputStream(("{\"x\":" + fine + "}").getBytes(StandardCharsets.UTF_8)))
                            .size());
        }
        Refusal refused = assertThrows(
                Refusal.class,
                () -> JsonBodies.parsed(
                        new ByteArrayInputStream(("{\"x\":" + "1".repeat(41) + "}").getBytes(StandardCharsets.UTF_8))));
        assertEquals("The body has a number of more than 40 digits", refused.text());
    }

    @Test
    void a_spoiled_body_is_read_or_refused() {
        SplittableRandom random = new SplittableRandom(SEED);
        String well =
                "{\"id\":\"01a2\",\"lines\":[{\"name\":\"Ä \\u00e9 \\\"x\\\"\",\"quantity\":{\"value\":\"1.5\",\"unit\":\"GAL\"}},"
                        + "{\"name\":null,\"on\":true,\"n\":-12.5e3}],\"note\":\"\"}";
        byte[] bytes = well.getBytes(StandardCharsets.UTF_8);
        byte[] signs = "{}[]:,\"\\-+.eE0u\0\u00ff".getBytes(StandardCharsets.ISO_8859_1);
        for (int i = 0; i < 60_000; i++) {
            byte[] spoiled = bytes.clone();
            for (int n = random.nextInt(1, 6); n > 0; n--) {
                int at = random.nextInt(spoiled.length);
                spoiled[at] = random.nextBoolean() ? signs[random.nextInt(signs.length)] : (byte) random.nextInt(256);
            }
            read(spoiled, "body " + i + " of seed " + SEED);
        }
    }

    @Test
    void what_is_typed_as_a_number_or_a_date_is_read_or_refused() {
        SplittableRandom random = new SplittableRandom(SEED);
        String signs = "0123456789.,-+ \u00a0'%$eE/:\u0661\uff11\u2212\0xN";
        for (Locale locale : List.of(Locale.US, Locale.GERMANY, Locale.of("tr", "TR"), Locale.of("ar", "EG"))) {
            Notation notation = new Notation(locale, CurrencyUnit.USD);
            for (int i = 0; i < 20_000; i++) {
                StringBuilder typed = new StringBuilder();
                for (int n = random.nextInt(0, 14); n > 0; n--) {
                    typed.append(signs.charAt(random.nextInt(signs.length())));
                }
                String text = typed.toString();
                String at = "'" + text + "' in " + locale + ", " + i + " of seed " + SEED;
                assertReadOrRefused(() -> notation.amount("field", text), at);
                assertReadOrRefused(() -> notation.percentage("field", text), at);
                assertReadOrRefused(() -> notation.decimal("field", text), at);
                assertReadOrRefused(() -> notation.integer("field", text), at);
                assertReadOrRefused(() -> notation.date("field", text), at);
            }
            for (String long_ : List.of("9".repeat(1_000_000), "1e" + "9".repeat(9), "0." + "0".repeat(1_000_000))) {
                assertTimeoutPreemptively(
                        SOON, () -> assertReadOrRefused(() -> notation.decimal("field", long_), "a long number"));
            }
        }
    }

    private static void assertReadOrRefused(Runnable reading, String at) {
        try {
            reading.run();
        } catch (Refusal refusal) {
            assertTrue(!refusal.text().isBlank(), at);
        } catch (RuntimeException e) {
            throw new AssertionError(at, e);
        }
    }
}
