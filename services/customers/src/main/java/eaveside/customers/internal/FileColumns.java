package eaveside.customers.internal;

import eaveside.customers.Customer;
import eaveside.customers.Site;
import eaveside.customers.SurfaceAttribute;
import eaveside.kernel.Decision;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.stream.Stream;

/** Which columns a file of customers has: those of a customer's and a site's records, and those of a surface. */
@Decision
public final class FileColumns {
    static final String CUSTOMER = "customer";
    static final String SITE = "site";

    public static final RecordColumns<Customer> CUSTOMERS = RecordColumns.of(
            Customer.class, List.of("id", "version"), title -> title.equals("name") ? CUSTOMER : title);

    /** Parts of a site's address have its name before them, to tell them from those of the billing address. */
    public static final RecordColumns<Site> SITES =
            RecordColumns.of(Site.class, List.of("id", "customer", "active", "version"), title -> switch (title) {
                case "name" -> SITE;
                case "street", "city", "region", "zip_code", "country" -> SITE + "_" + title;
                default -> title;
            });

    /** What a file need not say of a customer, since most are so. */
    public static final Map<String, String> USUAL = Map.of("type", "household", "payment_term_days", "30");

    /** Of a surface, beside its attributes. */
    enum OfSurface {
        SURFACE,
        SURFACE_TYPE,
        EXTENT,
        UNIT,
        ROWS,
        PANEL_MANUFACTURER
    }

    private FileColumns() {}

    /** Those of a surface, its attributes last. */
    public static List<String> ofSurface() {
        return Stream.<Enum<?>>concat(Stream.of(OfSurface.values()), Stream.of(SurfaceAttribute.values()))
                .map(FileColumns::title)
                .toList();
    }

    static String title(Enum<?> column) {
        return column.name().toLowerCase(Locale.ROOT);
    }
}
