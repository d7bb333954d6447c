package eaveside.web;

import eaveside.kernel.Money;
import eaveside.kernel.SpreadsheetCell;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.List;
import java.util.stream.Stream;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;

/**
 * Lists as CSV (RFC 4180, UTF-8 with a byte-order mark so that spreadsheets read it right). A text that a spreadsheet
 * would take for a formula gets an apostrophe in front; plain numbers stay numbers.
 */
public final class Csv {
    private Csv() {}

    public static Response download(String file, List<String> header, List<List<String>> rows) {
        return download(file, text(header, rows));
    }

    /** A file that is one already: a text, or a stream of its bytes. */
    public static Response download(String file, Object content) {
        return Response.ok(content)
                .type("text/csv;charset=UTF-8")
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + file + ".csv\"")
                .build();
    }

    /** A row of values, none of them null, as a spreadsheet reckons with them: amounts are plain numbers. */
    public static List<String> row(Object... values) {
        return Stream.of(values)
                .map(value -> value instanceof Money money ? money.amount().toPlainString() : value.toString())
                .toList();
    }

    static String text(List<String> header, List<List<String>> rows) {
        StringBuilder out = new StringBuilder("\uFEFF");
        try (CSVPrinter csv = new CSVPrinter(out, CSVFormat.RFC4180)) {
            csv.printRecord(header.stream().map(SpreadsheetCell::guarded).toList());
            for (List<String> row : rows) {
                csv.printRecord(row.stream().map(SpreadsheetCell::guarded).toList());
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toString();
    }
}
