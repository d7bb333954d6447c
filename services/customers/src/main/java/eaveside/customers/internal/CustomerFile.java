package eaveside.customers.internal;

import eaveside.customers.CustomersRefusal;
import eaveside.customers.ImportColumn;
import eaveside.customers.ImportReport.BadRow;
import eaveside.kernel.Digest;
import eaveside.kernel.SpreadsheetCell;
import java.io.IOException;
import java.io.StringReader;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;
import org.jspecify.annotations.Nullable;

/**
 * A file of customers as a table: which cell stands in which column of which line. What the cells mean is
 * {@link ImportPlan}'s.
 *
 * @param  fingerprint SHA-256 of the file
 * @param  badRows     rows that are no rows of this table
 */
public record CustomerFile(String fingerprint, List<Line> lines, List<BadRow> badRows) {
    static final int MOST_BYTES = 10_000_000;
    static final int MOST_ROWS = 20_000;

    /**
     * A row.
     *
     * @param  number of the file's line that it begins on
     * @param  cells  without surrounding blanks; absent where empty
     */
    record Line(long number, Map<String, String> cells) {
        /** Empty where there is nothing. */
        String text(String column) {
            return cells.getOrDefault(column, "");
        }

        boolean has(String column) {
            return cells.containsKey(column);
        }
    }

    /** Refuses what is not UTF-8, is too large, or has no header of this format. */
    public static CustomerFile read(byte[] file) {
        if (file.length > MOST_BYTES) {
            throw new CustomersRefusal.UnreadableFile("it is larger than " + MOST_BYTES / 1_000_000 + " MB");
        }
        String text = decoded(file);
        CSVFormat format =
                CSVFormat.RFC4180.builder().setDelimiter(delimiter(text)).get();
        try (CSVParser parser = CSVParser.builder()
                .setReader(new StringReader(text))
                .setFormat(format)
                .get()) {
            return read(parser, fingerprint(file));
        } catch (IOException e) {
            throw new CustomersRefusal.UnreadableFile(reason(e));
        }
    }

    private static CustomerFile read(CSVParser parser, String fingerprint) {
        List<Line> lines = new ArrayList<>();
        List<BadRow> badRows = new ArrayList<>();
        Iterator<CSVRecord> records = parser.iterator();
        List<String> header = header(records);
        long number = parser.getCurrentLineNumber() + 1;
        try {
            while (records.hasNext()) {
                CSVRecord row = records.next();
                if (!isEmpty(row)) {
                    if (lines.size() + badRows.size() == MOST_ROWS) {
                        throw new CustomersRefusal.UnreadableFile("it has more than " + MOST_ROWS + " rows");
                    }
                    if (row.size() == header.size()) {
                        lines.add(line(number, row, header));
                    } else {
                        badRows.add(new BadRow(
                                number, "has " + row.size() + " cells, but the header has " + header.size()));
                    }
                }
                number = parser.getCurrentLineNumber() + 1;
            }
        } catch (UncheckedIOException e) {
            // Where a quote is astray the rest of the file cannot be told apart any more.
            badRows.add(new BadRow(number, "cannot be read, nor what follows: " + reason(e.getCause())));
        }
        if (lines.isEmpty() && badRows.isEmpty()) {
            throw new CustomersRefusal.UnreadableFile("there is no row below the header");
        }
        return new CustomerFile(fingerprint, List.copyOf(lines), List.copyOf(badRows));
    }

    private static List<String> header(Iterator<CSVRecord> records) {
        List<ImportColumn> known = ImportColumn.all();
        List<String> header = new ArrayList<>();
        try {
            if (!records.hasNext()) {
                throw new CustomersRefusal.UnreadableFile("it is empty");
            }
            for (String cell : records.next()) {
                String title = cell.strip().toLowerCase(Locale.ROOT).replace(' ', '_');
                if (known.stream().noneMatch(column -> column.title().equals(title))) {
                    throw new CustomersRefusal.UnreadableFile(
                            "the header has a column '" + shortened(cell) + "' that is not known here");
                }
                if (header.contains(title)) {
                    throw new CustomersRefusal.UnreadableFile("the header has the column " + title + " twice");
                }
                header.add(title);
            }
        } catch (UncheckedIOException e) {
            throw new CustomersRefusal.UnreadableFile(reason(e.getCause()));
        }
        for (ImportColumn column : known) {
            if (column.required() && !header.contains(column.title())) {
                throw new CustomersRefusal.UnreadableFile("the header lacks the column " + column.title());
            }
        }
        return header;
    }

    private static Line line(long number, CSVRecord row, List<String> header) {
        Map<String, String> cells = new HashMap<>();
        for (int i = 0; i < header.size(); i++) {
            String cell = SpreadsheetCell.plain(row.get(i).strip());
            if (!cell.isEmpty()) {
                cells.put(header.get(i), cell);
            }
        }
        return new Line(number, Map.copyOf(cells));
    }

    private static boolean isEmpty(CSVRecord row) {
        return row.stream().allMatch(String::isBlank);
    }

    private static String decoded(byte[] file) {
        try {
            String text = StandardCharsets.UTF_8
                    .newDecoder()
                    .decode(ByteBuffer.wrap(file))
                    .toString();
            return text.startsWith("\uFEFF") ? text.substring(1) : text;
        } catch (CharacterCodingException e) {
            throw new CustomersRefusal.UnreadableFile("it is not UTF-8 text; save it as CSV UTF-8");
        }
    }

    /** Column titles hold neither comma nor semicolon, so the header tells. */
    private static char delimiter(String text) {
        String header = text.lines().findFirst().orElse("");
        return header.indexOf(';') >= 0 ? ';' : ',';
    }

    private static String fingerprint(byte[] file) {
        return Digest.sha256(file);
    }

    private static String reason(@Nullable Throwable e) {
        return e == null ? "it cannot be read" : shortened(String.valueOf(e.getMessage()));
    }

    private static String shortened(String text) {
        return text.length() > 100 ? text.substring(0, 100) + "…" : text;
    }
}
