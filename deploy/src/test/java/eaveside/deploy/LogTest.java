package eaveside.deploy;

import static org.junit.jupiter.api.Assertions.assertEquals;
import static org.junit.jupiter.api.Assertions.assertFalse;
import static org.junit.jupiter.api.Assertions.assertNull;
import static org.junit.jupiter.api.Assertions.assertTrue;

import java.time.Instant;
import java.util.logging.Level;
import java.util.logging.LogRecord;
import org.junit.jupiter.api.Test;

class LogTest {
    private static LogRecord line(Level level, String message, int second) {
        LogRecord line = new LogRecord(level, message);
        line.setLoggerName("eaveside.test");
        line.setInstant(Instant.parse("2026-11-28T10:00:00Z").plusSeconds(second));
        return line;
    }

    @Test
    void one_thing_takes_one_line_whatever_it_says() {
        LogRecord line = line(
                Level.WARNING, "at /a\n2026-11-28 SEVERE eaveside.access: owner signed in\r\u001b[31m\u2028\u202e", 0);
        String text = new LogLine().format(line);
        assertEquals(1, text.lines().count(), text);
        assertTrue(
                text.endsWith(
                        "WARNING eaveside.test: at /a\\u000a2026-11-28 SEVERE eaveside.access: owner signed in\\u000d\\u001b[31m\\u2028\\u202e\n"),
                text);
        assertTrue(
                text.matches("(?s)2026-11-2\\dT\\d\\d:\\d\\d:00\\.000[+-]\\d\\d:\\d\\d .*"),
                "the offset is told: " + text);
    }

    @Test
    void what_was_thrown_begins_no_line_of_its_own() {
        LogRecord line = line(Level.SEVERE, "Fault", 0);
        line.setThrown(new IllegalStateException("first\n2026-11-28T10:00:00.000Z SEVERE forged"));
        String text = new LogLine().format(line);
        assertTrue(text.lines().skip(1).allMatch(each -> each.startsWith("    | ")), text);
        assertTrue(text.lines().count() > 5, "the stack is there");
    }

    @Test
    void a_fault_that_comes_again_and_again_is_told_once_a_minute_with_a_count() {
        RepeatedFaults faults = new RepeatedFaults();
        assertTrue(faults.isLoggable(line(Level.SEVERE, "Fault 01a22260-1b2d-7249 at x", 0)));
        for (int i = 1; i < 60; i++) {
            assertFalse(faults.isLoggable(line(Level.SEVERE, "Fault 01a22260-1b2d-" + (7000 + i) + " at x", i)));
        }
        assertTrue(faults.isLoggable(line(Level.SEVERE, "Fault 01a22260-1b2d-7249 at y", 30)), "another place");
        assertTrue(faults.isLoggable(line(Level.INFO, "sign-in", 30)));
        assertTrue(faults.isLoggable(line(Level.INFO, "sign-in", 30)), "what is no fault is told each time");
        LogRecord again = line(Level.SEVERE, "Fault 01a22260-1b2d-9999 at x", 61);
        again.setThrown(new IllegalStateException());
        assertFalse(faults.isLoggable(line(Level.SEVERE, "Fault 1 at x", 59)));
        LogRecord thrown = line(Level.SEVERE, "Fault 01a22260-1b2d-9999 at x", 61);
        assertTrue(faults.isLoggable(thrown));
        String told = new LogLine().format(thrown);
        assertTrue(
                told.endsWith(": Fault 01a22260-1b2d-9999 at x (and 60 more like it since 2026-11-28T10:00:00Z)\n"),
                told);
        assertTrue(new LogLine().format(new LogRecord(Level.SEVERE, null)).endsWith(": \n"), "nothing is something");
        assertNull(thrown.getThrown());
        assertTrue(faults.isLoggable(again), "of another kind, since it throws");
    }

    @Test
    void many_kinds_of_faults_take_no_more_room_than_some() {
        RepeatedFaults faults = new RepeatedFaults();
        for (int i = 0; i < 5_000; i++) {
            faults.isLoggable(line(Level.WARNING, "kind " + "x".repeat(i % 700), i % 30));
        }
        assertTrue(faults.isLoggable(line(Level.WARNING, "yet another", 30)));
    }
}
