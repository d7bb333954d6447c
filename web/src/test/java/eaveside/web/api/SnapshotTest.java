package eaveside.web.api;

import static org.junit.jupiter.api.Assertions.assertEquals;

import java.util.List;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

/** How snapshots are written and compared. */
class SnapshotTest {
    @Test
    void a_difference_shows_the_lines_that_changed_and_those_around_them() {
        List<String> before = IntStream.range(0, 30).mapToObj(i -> "line " + i).toList();
        List<String> after = before.stream()
                .filter(line -> !line.equals("line 20"))
                .map(line -> line.equals("line 2") ? "another" : line)
                .toList();

        assertEquals("""
                  line 0
                  line 1
                - line 2
                + another
                  line 3
                  line 4
                  line 5
                  line 6
                  ...
                  line 16
                  line 17
                  line 18
                  line 19
                - line 20
                  line 21
                  line 22
                  line 23
                  line 24
                """, Snapshot.difference(before, after));
    }

    @Test
    void members_stay_in_their_order_and_numbers_as_they_came() {
        String json = "{\"b\":1.50,\"a\":[1,2],\"c\":{\"d\":\"x\",\"e\":null}}";
        assertEquals(
                "{\"b\": 1.50, \"a\": [1, 2], \"c\": {\"d\": \"x\", \"e\": null}}",
                Print.plain().of(json));

        String longer = json.replace("x", "x".repeat(120));
        assertEquals("""
                {
                  "b": 1.50,
                  "a": [1, 2],
                  "c": {
                    "d": "%s",
                    "e": null
                  }
                }""".formatted("x".repeat(120)), Print.plain().of(longer));
    }

    @Test
    void a_long_list_ends_after_its_first_two() {
        assertEquals("[1, 2, <2 more>]", new Print(text -> text, true).of("[1,2,3,4]"));
    }

    @Test
    void amounts_and_quantities_are_spelled_out() {
        assertEquals(
                "{\"a\": {\"amount\": \"-9.50\", \"currency\": \"USD\"}, \"q\": {\"value\": \"4\", \"unit\": \"H87\"}}",
                World.spelled("{\"a\": $-9.50$, \"q\": #4 H87#}"));
        assertEquals(
                "{\"amount\": \"0.7\", \"currency\": \"USD\", \"per\": {\"value\": \"1\", \"unit\": \"SMI\"}}",
                World.spelled("$0.7 per 1 SMI$"));
    }
}
