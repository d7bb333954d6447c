package eaveside.deploy;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Objects;
import java.util.logging.Formatter;
import java.util.logging.LogRecord;
import java.util.stream.Collectors;

/**
 * One line for one thing, with the time and its offset from UTC. What came from outside cannot begin a line of its own: control
 * characters are written as their codes, and the lines of a stack trace are indented behind a bar.
 */
public final class LogLine extends Formatter {
    private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("yyyy-MM-dd'T'HH:mm:ss.SSSxxx");

    @Override
    public String format(LogRecord line) {
        String first = TIME.format(line.getInstant().atZone(ZoneId.systemDefault())) + " "
                + line.getLevel().getName() + " " + line.getLoggerName() + ": "
                + oneLine(Objects.requireNonNullElse(formatMessage(line), "")) + "\n";
        return line.getThrown() == null ? first : first + trace(line.getThrown());
    }

    private static String trace(Throwable thrown) {
        StringWriter text = new StringWriter();
        thrown.printStackTrace(new PrintWriter(text, true));
        return text.toString()
                .lines()
                .map(line -> "    | " + oneLine(line) + "\n")
                .collect(Collectors.joining());
    }

    static String oneLine(String text) {
        StringBuilder line = new StringBuilder(text.length());
        text.codePoints().forEach(c -> {
            boolean breaks = Character.isISOControl(c) && c != '\t' || c == '\u2028' || c == '\u2029' || isHidden(c);
            if (breaks) {
                line.append(String.format("\\u%04x", c));
            } else {
                line.appendCodePoint(c);
            }
        });
        return line.toString();
    }

    /** Marks that turn the direction of writing, with which a line could be made to look like another. */
    private static boolean isHidden(int c) {
        return Character.getType(c) == Character.FORMAT;
    }
}
