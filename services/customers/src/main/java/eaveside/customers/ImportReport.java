package eaveside.customers;

import eaveside.customers.internal.Reasons;
import eaveside.kernel.CustomerId;
import jakarta.persistence.Convert;
import jakarta.persistence.Embeddable;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a file of customers holds.
 *
 * @param  rows           rows below the header, without empty lines
 * @param  customers      that are new; so are the sites and surfaces
 * @param  badRows        every row that cannot be imported, by line
 * @param  importedBefore when this very file was imported already; importing it again changes nothing
 * @param  unchanged      customers of the file who are here already and say the same; they stay as they are
 * @param  duplicateRows  new customers who may be here already, by line
 */
public record ImportReport(
        int rows,
        int customers,
        int sites,
        int surfaces,
        List<BadRow> badRows,
        @Nullable Instant importedBefore,
        int unchanged,
        List<DuplicateRow> duplicateRows) {
    /**
     * A row that cannot be imported.
     *
     * @param  line   line of the file that the row begins on, counted from 1 with the header
     * @param  reason what is wrong, in words
     */
    public record BadRow(long line, String reason) {}

    /**
     * A new customer who may be the same as another.
     *
     * @param  line      of the customer's first row
     * @param  other     whom it may be the same as; null where that is a new one of this file too
     * @param  otherLine of that one's first row; null where it is stored
     */
    @Embeddable
    public record DuplicateRow(
            long line,
            String name,
            String otherName,
            @Nullable CustomerId other,
            @Nullable Long otherLine,
            @Convert(converter = Reasons.class) Set<Duplicate.Because> because) {
        public DuplicateRow {
            because = Set.copyOf(because);
        }
    }

    public ImportReport {
        badRows = List.copyOf(badRows);
        duplicateRows = List.copyOf(duplicateRows);
    }

    /** Of a file whose customers are all new and like nobody. */
    public ImportReport(
            int rows, int customers, int sites, int surfaces, List<BadRow> badRows, @Nullable Instant importedBefore) {
        this(rows, customers, sites, surfaces, badRows, importedBefore, 0, List.of());
    }

    public boolean isClean() {
        return badRows.isEmpty();
    }

    /** How many rows are bad; one that is bad in several ways is still one row. */
    public int badRowCount() {
        return (int) badRows.stream().mapToLong(BadRow::line).distinct().count();
    }
}
