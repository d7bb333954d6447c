package eaveside.web.api;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertTrue;

import eaveside.web.api.Operations.Operation;
import eaveside.web.testing.Described;
import eaveside.web.testing.OnItsOwnCompany;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;

/** Every answer of the interface for scripts is what it was: status, type and body, also of what it refuses. */
@OnItsOwnCompany
class ApiSnapshotHttpIT {
    private final ApiRun run = ApiRun.shared();

    static Stream<String> parts() {
        return ApiRun.shared().parts().keySet().stream();
    }

    @ParameterizedTest
    @MethodSource("parts")
    void the_answers_are_as_they_were(String part) {
        Snapshot.matches(part + ".txt", run.parts().get(part));
    }

    @Test
    void no_snapshot_is_left_of_what_is_sent_no_longer() {
        Set<String> wanted = new TreeSet<>(run.parts().keySet());
        wanted.add("operations");
        assertEquals(wanted, Snapshot.names());
    }

    @Test
    void the_work_went_as_it_was_meant_to() {
        assertEquals("", String.join("\n", run.surprises()));
    }

    /** An operation that is added fails here until it is sent something that it takes. */
    @Test
    void every_operation_was_answered_well_and_refused() {
        assertTrue(Operations.all().size() > 80, "only " + Operations.all().size() + " operations were found");
        StringBuilder table = new StringBuilder();
        List<String> wrong = new ArrayList<>();
        for (Operation operation : Operations.all()) {
            Set<Integer> statuses = run.exchanges().stream()
                    .filter(exchange -> exchange.operation().equals(operation.name()))
                    .map(World.Exchange::status)
                    .collect(Collectors.toCollection(TreeSet::new));
            if (statuses.stream().noneMatch(status -> status / 100 == 2)) {
                wrong.add(operation.name() + " never went well");
            }
            if (!statuses.contains(401)) {
                wrong.add(operation.name() + " was open to nobody in particular");
            }
            if (!statuses.contains(403) && operation.roles().size() < 3) {
                wrong.add(operation.name() + " was refused to nobody");
            }
            if (statuses.stream().anyMatch(status -> status >= 500)) {
                wrong.add(operation.name() + " broke");
            }
            table.append(String.format("%-62s", operation.name()))
                    .append(statuses)
                    .append('\n');
        }
        assertEquals("", String.join("\n", wrong));
        Snapshot.matches("operations.txt", table.toString());
    }

    /** Hundreds of real answers, good and bad, against what {@code /openapi} says of them. */
    @Test
    void every_answer_is_as_the_description_says() {
        Described described = Described.ofServer();
        Set<String> wrong = new TreeSet<>();
        for (World.Exchange exchange : run.exchanges()) {
            String[] operation = exchange.operation().split(" ");
            if (operation.length == 2 && exchange.type().contains("json")) {
                described
                        .check(
                                operation[0],
                                operation[1],
                                exchange.status(),
                                exchange.request().isEmpty() ? null : exchange.request(),
                                exchange.answer())
                        .stream()
                        // What an exchange keeps of its address is the operation's, without what was put into it.
                        .filter(problem -> !problem.contains(" parameter ") || !problem.contains("{"))
                        .forEach(wrong::add);
            }
        }
        assertEquals("", String.join("\n", wrong));
    }

    @Test
    void every_wrong_value_is_refused_under_the_name_of_its_field() {
        assertTrue(run.spoiled().size() > 300, "only " + run.spoiled().size() + " wrong values were sent");
        assertEquals("", String.join("\n", run.untold()));
    }

    @Test
    void the_books_are_true_afterwards() {
        assertFalse(run.proofs().isEmpty(), "there are no proofs");
        assertEquals(
                List.of(), run.proofs().stream().filter(proof -> !proof.holds()).toList());
    }
}
