package eaveside.web.api;

import static org.junit.jupiter.api.Assertions.assertEquals;

import eaveside.web.testing.OnItsOwnCompany;
import java.util.List;
import org.junit.jupiter.api.Tag;
import org.junit.jupiter.api.Test;

/**
 * The whole interface for scripts with each change sent four times at the same moment, all alike, as by a phone that lost its
 * signal or a script that was impatient: the work is done once, and all are told the same.
 */
@Tag("long")
@OnItsOwnCompany
class AtOnceHttpIT {
    @Test
    void the_same_at_once_is_done_once_and_answered_alike() {
        ApiRun run = new ApiRun(4);

        assertEquals(
                List.of(),
                run.exchanges().stream()
                        .filter(exchange -> exchange.status() >= 500)
                        .toList());
        assertEquals("", String.join("\n", run.unlike()));
        assertEquals("", String.join("\n", run.surprises()));
        assertEquals(
                List.of(), run.proofs().stream().filter(proof -> !proof.holds()).toList());
    }
}
