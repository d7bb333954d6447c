package eaveside.customers;

import java.util.Locale;
import java.util.Optional;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/**
 * The columns of a file of customers, beside one for each {@link SurfaceAttribute} under its name. One row for each
 * surface; a customer or site without surfaces has a row of its own. Later rows of the same customer, or of the same
 * site of a customer, leave its columns empty or repeat them.
 */
public enum ImportColumn {
    CUSTOMER(true, "Name; rows with the same name are one customer"),
    TYPE("household or business; household where empty"),
    STREET("Of the billing address"),
    CITY("Of the billing address"),
    REGION("Of the billing address"),
    ZIP_CODE("Of the billing address"),
    COUNTRY(true, "Two letters of ISO 3166-1, such as US; needed in the customer's first row"),
    EMAIL("Of the customer"),
    PHONE("Of the customer"),
    PAYMENT_TERM_DAYS("Days until an invoice is due; 30 where empty"),
    NOTE("About the customer"),
    ACTIVE("yes or no, whether you still work for the customer; yes where empty"),
    SITE("Name of the site; rows of one customer with the same site name are one site"),
    SITE_STREET("Of the site; where the whole site address is empty, the billing address stands"),
    SITE_CITY("Of the site"),
    SITE_REGION("Of the site"),
    SITE_ZIP_CODE("Of the site"),
    SITE_COUNTRY("Of the site; the customer's where empty"),
    ACCESS_NOTES("How to get in and park"),
    HAZARDS("What can hurt at the site"),
    WATER_ON_SITE("yes or no; no where empty"),
    SURFACE("Name of the surface, once for each site"),
    SURFACE_TYPE("array, skylight, window or roof"),
    EXTENT("How many pieces, or how large; a point before decimals"),
    UNIT("H87 for pieces, FTK for square feet, MTK for square meters; H87 where empty, except for a roof"),
    ROWS("In how many rows an array stands; 1 where empty"),
    PANEL_MANUFACTURER("Who made an array's modules; must have been entered before");

    private final boolean required;
    private final String meaning;

    ImportColumn(String meaning) {
        this(false, meaning);
    }

    ImportColumn(boolean required, String meaning) {
        this.required = required;
        this.meaning = meaning;
    }

    /** A column as people read about it. */
    public record Description(String name, boolean required, String meaning) {}

    /** Every column that a file may have, those of the attributes last. */
    public static Stream<Description> described() {
        return Stream.concat(
                Stream.of(values()).map(column -> new Description(column.title(), column.required, column.meaning)),
                Stream.of(SurfaceAttribute.values())
                        .map(a -> new Description(
                                title(a), false, "A whole number from " + a.lowest() + " to " + a.highest())));
    }

    /** What the header calls it. */
    public String title() {
        return title(this);
    }

    /** What the header calls a column, or an attribute's column. */
    public static String title(Enum<?> column) {
        return column.name().toLowerCase(Locale.ROOT);
    }

    /** The column or attribute of a header cell; capitals do not count, and blanks stand for underscores. */
    public static Optional<Enum<?>> ofTitle(@Nullable String cell) {
        String title = cell == null ? "" : cell.strip().toLowerCase(Locale.ROOT).replace(' ', '_');
        return Stream.<Enum<?>>concat(Stream.of(values()), Stream.of(SurfaceAttribute.values()))
                .filter(column -> title(column).equals(title))
                .findFirst();
    }

    public boolean isRequired() {
        return required;
    }
}
