package eaveside.customers;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a file of customers holds.
 *
 * @param rows           rows below the header, without empty lines
 * @param badRows        every row that cannot be imported, by line
 * @param importedBefore when this very file was imported already; importing it again changes nothing
 */
public record ImportReport(
        int rows,
        int customers,
        int sites,
        int surfaces,
        List<BadRow> badRows,
        @Nullable Instant importedBefore) {
    /**
     * A row that cannot be imported.
     *
     * @param line   line of the file that the row begins on, counted from 1 with the header
     * @param reason what is wrong, in words
     */
    public record BadRow(long line, String reason) {}

    public ImportReport {
        badRows = List.copyOf(badRows);
    }

    public boolean isClean() {
        return badRows.isEmpty();
    }
}
