package eaveside.customers.internal;

import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.CustomerType;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ImportColumn;
import eaveside.customers.ManufacturerName;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.customers.internal.CustomerFile.Line;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Decision;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.Unit;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.jspecify.annotations.Nullable;

/** What the cells of one row say; refuses as the customers', sites' and surfaces' own constructors do. */
@Decision
final class ImportCells {
    private static final int USUAL_TERM_DAYS = 30;

    private final Set<ManufacturerName> manufacturers;

    ImportCells(Set<ManufacturerName> manufacturers) {
        this.manufacturers = manufacturers;
    }

    Customer customer(Line line) {
        return new Customer(
                CustomerId.next(),
                line.text(ImportColumn.CUSTOMER),
                line.has(ImportColumn.TYPE)
                        ? oneOf(CustomerType.class, ImportColumn.TYPE, line)
                        : CustomerType.HOUSEHOLD,
                new Address(
                        line.text(ImportColumn.STREET),
                        line.text(ImportColumn.CITY),
                        line.text(ImportColumn.REGION),
                        line.text(ImportColumn.ZIP_CODE),
                        line.text(ImportColumn.COUNTRY).toUpperCase(Locale.ROOT)),
                line.text(ImportColumn.EMAIL),
                line.text(ImportColumn.PHONE),
                whole(ImportColumn.PAYMENT_TERM_DAYS, line, USUAL_TERM_DAYS),
                line.text(ImportColumn.NOTE),
                !line.has(ImportColumn.ACTIVE) || yes(ImportColumn.ACTIVE, line),
                0);
    }

    /** Null where the customer's own row is bad. */
    @Nullable
    Site site(Line line, @Nullable Customer customer) {
        boolean water = yes(ImportColumn.WATER_ON_SITE, line);
        if (customer == null) {
            return null;
        }
        return new Site(
                SiteId.next(),
                customer.id(),
                line.text(ImportColumn.SITE),
                address(line, customer.address()),
                line.text(ImportColumn.ACCESS_NOTES),
                line.text(ImportColumn.HAZARDS),
                water,
                true,
                0);
    }

    private static Address address(Line line, Address billing) {
        boolean own = Stream.of(
                        ImportColumn.SITE_STREET,
                        ImportColumn.SITE_CITY,
                        ImportColumn.SITE_REGION,
                        ImportColumn.SITE_ZIP_CODE,
                        ImportColumn.SITE_COUNTRY)
                .anyMatch(line::has);
        if (!own) {
            return billing;
        }
        String country = line.text(ImportColumn.SITE_COUNTRY).toUpperCase(Locale.ROOT);
        return new Address(
                line.text(ImportColumn.SITE_STREET),
                line.text(ImportColumn.SITE_CITY),
                line.text(ImportColumn.SITE_REGION),
                line.text(ImportColumn.SITE_ZIP_CODE),
                country.isEmpty() ? billing.country() : country);
    }

    static boolean namesSurface(Line line) {
        return Stream.<Enum<?>>concat(
                        Stream.of(
                                ImportColumn.SURFACE,
                                ImportColumn.SURFACE_TYPE,
                                ImportColumn.EXTENT,
                                ImportColumn.UNIT,
                                ImportColumn.ROWS,
                                ImportColumn.PANEL_MANUFACTURER),
                        Stream.of(SurfaceAttribute.values()))
                .anyMatch(line::has);
    }

    /** Checked in full even where the site's own row is bad, so that one dry run finds every bad row. */
    Surface surface(Line line, @Nullable Site site) {
        SurfaceType type = oneOf(SurfaceType.class, ImportColumn.SURFACE_TYPE, line);
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        for (SurfaceAttribute attribute : SurfaceAttribute.values()) {
            if (line.has(attribute)) {
                attributes.put(attribute, whole(attribute, line, 0));
            }
        }
        return new Surface(
                SurfaceId.next(),
                site == null ? SiteId.next() : site.id(),
                type,
                line.text(ImportColumn.SURFACE),
                Quantity.of(number(ImportColumn.EXTENT, line), unit(line, type)),
                whole(ImportColumn.ROWS, line, type == SurfaceType.ARRAY ? 1 : 0),
                manufacturer(line),
                attributes,
                true,
                0);
    }

    private static Unit unit(Line line, SurfaceType type) {
        if (line.has(ImportColumn.UNIT)) {
            return Unit.ofCode(line.text(ImportColumn.UNIT).toUpperCase(Locale.ROOT));
        }
        if (type.units().size() > 1) {
            throw new CustomersRefusal.BadCell(ImportColumn.UNIT, "", "FTK or MTK");
        }
        return type.units().getFirst();
    }

    private @Nullable ManufacturerName manufacturer(Line line) {
        if (!line.has(ImportColumn.PANEL_MANUFACTURER)) {
            return null;
        }
        ManufacturerName written = new ManufacturerName(line.text(ImportColumn.PANEL_MANUFACTURER));
        return manufacturers.stream()
                .filter(manufacturer -> manufacturer.value().equalsIgnoreCase(written.value()))
                .findFirst()
                .orElseThrow(() -> new CustomersRefusal.NoSuchManufacturer(written));
    }

    private static <E extends Enum<E>> E oneOf(Class<E> type, ImportColumn column, Line line) {
        for (E constant : type.getEnumConstants()) {
            if (constant.name().equalsIgnoreCase(line.text(column))) {
                return constant;
            }
        }
        String choices = String.join(
                " or ",
                Stream.of(type.getEnumConstants()).map(ImportColumn::title).toList());
        throw new CustomersRefusal.BadCell(column, line.text(column), choices);
    }

    private static boolean yes(ImportColumn column, Line line) {
        return switch (line.text(column).toLowerCase(Locale.ROOT)) {
            case "yes", "true", "1" -> true;
            case "no", "false", "0", "" -> false;
            default -> throw new CustomersRefusal.BadCell(column, line.text(column), "yes or no");
        };
    }

    private static int whole(Enum<?> column, Line line, int otherwise) {
        if (!line.has(column)) {
            return otherwise;
        }
        try {
            return Integer.parseInt(line.text(column));
        } catch (NumberFormatException e) {
            throw new CustomersRefusal.BadCell(column, line.text(column), "a whole number");
        }
    }

    private static BigDecimal number(ImportColumn column, Line line) {
        String text = Texts.optional(column.title(), line.text(column), 30);
        if (!text.matches("[0-9]+(\\.[0-9]+)?")) {
            throw new CustomersRefusal.BadCell(column, text, "a number such as 48 or 12.5");
        }
        return new BigDecimal(text);
    }
}
