package eaveside.customers;

import eaveside.customers.internal.FileColumns;
import eaveside.customers.internal.RecordColumns;
import java.util.ArrayList;
import java.util.List;

/**
 * A column of a file of customers. A customer and a site have one for each component of their records; a surface has its own,
 * and one for each {@link SurfaceAttribute}. One row for each surface; a customer or site without surfaces has a row of its
 * own. Later rows of the same customer, or of the same site of a customer, leave its columns empty or repeat them.
 *
 * @param  title     what the header calls it
 * @param  component of the record that it says, such as {@code paymentTermDays}; the title itself for a surface
 * @param  required  whether a file must have it
 * @param  choices   as they are written; none where the column holds something else
 */
public record ImportColumn(String title, String component, boolean required, List<String> choices) {
    public ImportColumn {
        choices = List.copyOf(choices);
    }

    /** Every column that a file may have. */
    public static List<ImportColumn> all() {
        List<ImportColumn> all = new ArrayList<>(ofCustomer());
        FileColumns.SITES.described().forEach(column -> all.add(of(column, false)));
        FileColumns.ofSurface().forEach(title -> all.add(new ImportColumn(title, title, false, List.of())));
        return all;
    }

    /** Those that say all of a customer, so that a file of them can be imported. */
    public static List<ImportColumn> ofCustomer() {
        return FileColumns.CUSTOMERS.described().stream()
                .map(column -> of(column, !column.optional() && !FileColumns.USUAL.containsKey(column.title())))
                .toList();
    }

    /** What such a file says of the customer, a cell for each of {@link #ofCustomer}. */
    public static List<String> cells(Customer customer) {
        return FileColumns.CUSTOMERS.cells(customer);
    }

    private static ImportColumn of(RecordColumns.Described column, boolean required) {
        return new ImportColumn(column.title(), column.component(), required, column.choices());
    }
}
