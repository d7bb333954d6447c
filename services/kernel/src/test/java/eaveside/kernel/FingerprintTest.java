package eaveside.kernel;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertNotEquals;

import java.math.BigDecimal;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class FingerprintTest {
    record Command(String text, @Nullable BigDecimal number, Set<String> tags, Map<String, Integer> counts) {}

    record Older(String text) {}

    private static Command command(String text, @Nullable String number) {
        return new Command(text, number == null ? null : new BigDecimal(number), Set.of(), Map.of());
    }

    @Test
    void equal_contents_are_one_whatever_their_form() {
        assertEquals(Fingerprint.of(command("a", "2")), Fingerprint.of(command("a", "2.00")));
        assertEquals(Fingerprint.of(command("a", "0")), Fingerprint.of(command("a", "0E+3")));
        assertEquals(
                Fingerprint.of(new Command("a", null, Set.of("x", "y", "z"), Map.of("k", 1, "l", 2))),
                Fingerprint.of(new Command("a", null, Set.of("z", "x", "y"), Map.of("l", 2, "k", 1))));
    }

    @Test
    void other_contents_are_others() {
        assertNotEquals(Fingerprint.of(command("a", "2")), Fingerprint.of(command("a", "3")));
        assertNotEquals(Fingerprint.of(command("a", "2")), Fingerprint.of(command("b", "2")));
        assertNotEquals(Fingerprint.of(command("a", "0")), Fingerprint.of(command("a", null)));
    }

    @Test
    void a_text_cannot_pass_for_another_component() {
        assertNotEquals(
                Fingerprint.canonical(new Command("a';number:2;", null, Set.of(), Map.of())),
                Fingerprint.canonical(command("a", "2")));
    }

    @Test
    void what_is_absent_does_not_count_so_that_a_command_may_grow() {
        record Newer(String text, @Nullable Money tip, String note, List<String> more) {}
        assertEquals(
                Fingerprint.canonical(new Older("a")).replace("Older", ""),
                Fingerprint.canonical(new Newer("a", null, "", List.of())).replace("Newer", ""));
        assertNotEquals(
                Fingerprint.canonical(new Older("a")).replace("Older", ""),
                Fingerprint.canonical(new Newer("a", Money.of(CurrencyUnit.USD, "1"), "", List.of()))
                        .replace("Newer", ""));
    }
}
