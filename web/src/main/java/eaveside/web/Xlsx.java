package eaveside.web;

import eaveside.kernel.Money;
import eaveside.kernel.Percent;
import eaveside.kernel.Quantity;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.Response;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.List;
import org.dhatim.fastexcel.Workbook;
import org.dhatim.fastexcel.Worksheet;
import org.jspecify.annotations.Nullable;

/**
 * Lists as a spreadsheet (Office Open XML, ECMA-376): amounts, numbers and days are what they are, so that they add up and sort;
 * everything else is text, which no program reads as a formula.
 */
public final class Xlsx {
    public static final String TYPE = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet";

    private static final int LONGEST_TEXT = 32_767;
    private static final int WIDEST = 50;

    private Xlsx() {}

    /**
     * @param  rows of values as lists have them; a value of another type is written as its words say it
     */
    public static Response download(String file, List<String> header, List<List<@Nullable Object>> rows) {
        return Response.ok(bytes(file, header, rows))
                .type(TYPE)
                .header(HttpHeaders.CONTENT_DISPOSITION, "attachment; filename=\"" + file + ".xlsx\"")
                .build();
    }

    static byte[] bytes(String name, List<String> header, List<List<@Nullable Object>> rows) {
        var out = new ByteArrayOutputStream();
        try (Workbook book = new Workbook(out, "Eaveside", null)) {
            Worksheet sheet = book.newWorksheet(name);
            for (int column = 0; column < header.size(); column++) {
                sheet.value(0, column, header.get(column));
                sheet.width(column, width(header.get(column), column, rows));
            }
            sheet.range(0, 0, 0, Math.max(0, header.size() - 1)).style().bold().set();
            sheet.freezePane(0, 1);
            for (int row = 0; row < rows.size(); row++) {
                List<@Nullable Object> values = rows.get(row);
                for (int column = 0; column < values.size(); column++) {
                    write(sheet, row + 1, column, values.get(column));
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return out.toByteArray();
    }

    private static void write(Worksheet sheet, int row, int column, @Nullable Object value) {
        switch (value) {
            case null -> {}
            case Money amount -> {
                sheet.value(row, column, amount.amount());
                sheet.style(row, column)
                        .format("#,##0." + "0".repeat(amount.currency().getDecimalPlaces()))
                        .set();
            }
            case Quantity quantity -> sheet.value(row, column, quantity.value());
            case Percent rate -> sheet.value(row, column, rate.value());
            case BigDecimal number -> sheet.value(row, column, number);
            case Integer number -> sheet.value(row, column, number);
            case Long number -> sheet.value(row, column, number);
            case LocalDate day -> {
                sheet.value(row, column, day);
                sheet.style(row, column).format("yyyy-mm-dd").set();
            }
            default -> sheet.value(row, column, cut(value.toString()));
        }
    }

    /** As much as a cell holds, without what XML cannot hold. */
    private static String cut(String text) {
        String kept = text.replaceAll("[\\x00-\\x08\\x0B\\x0C\\x0E-\\x1F\\uFFFE\\uFFFF]", "");
        return kept.length() > LONGEST_TEXT ? kept.substring(0, LONGEST_TEXT) : kept;
    }

    /** As wide as what stands in it, within reason; the first hundred rows tell. */
    private static int width(String head, int column, List<List<@Nullable Object>> rows) {
        int longest = head.length();
        for (List<@Nullable Object> row : rows.subList(0, Math.min(100, rows.size()))) {
            Object value = row.get(column);
            longest = Math.max(longest, value == null ? 0 : value.toString().length());
        }
        return Math.min(WIDEST, longest + 2);
    }
}
