package eaveside.customers.internal;

import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.customers.CustomersRefusal;
import eaveside.customers.ManufacturerName;
import eaveside.customers.Site;
import eaveside.customers.Surface;
import eaveside.customers.SurfaceAttribute;
import eaveside.customers.SurfaceType;
import eaveside.customers.internal.CustomerFile.Line;
import eaveside.customers.internal.FileColumns.OfSurface;
import eaveside.kernel.CustomerId;
import eaveside.kernel.Decision;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.Unit;
import java.math.BigDecimal;
import java.util.EnumMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/** What the cells of one row say; refuses as the customers', sites' and surfaces' own constructors do. */
@Decision
final class ImportCells {
    private static final List<String> ADDRESS = FileColumns.SITES.titles().stream()
            .filter(title -> title.startsWith("site_"))
            .toList();

    private final Set<ManufacturerName> manufacturers;

    ImportCells(Set<ManufacturerName> manufacturers) {
        this.manufacturers = manufacturers;
    }

    Customer customer(Line line) {
        return FileColumns.CUSTOMERS.read(
                title -> line.has(title) ? line.text(title) : FileColumns.USUAL.getOrDefault(title, ""),
                Map.of("id", CustomerId.next()));
    }

    /** Null where the customer's own row is bad. */
    @Nullable
    Site site(Line line, @Nullable Customer customer) {
        if (customer == null) {
            RecordColumns.flag("water_on_site", line.has("water_on_site") ? line.text("water_on_site") : "no");
            return null;
        }
        Address billing = customer.address();
        Map<String, Object> said = Map.of("id", SiteId.next(), "customer", customer.id());
        Map<String, Object> withBilling = Map.of("id", SiteId.next(), "customer", customer.id(), "address", billing);
        return FileColumns.SITES.read(
                title -> title.equals("site_country") && !line.has(title) ? billing.country() : line.text(title),
                ADDRESS.stream().anyMatch(line::has) ? said : withBilling);
    }

    static boolean namesSurface(Line line) {
        return FileColumns.ofSurface().stream().anyMatch(line::has);
    }

    /** Checked in full even where the site's own row is bad, so that one dry run finds every bad row. */
    Surface surface(Line line, @Nullable Site site) {
        SurfaceType type = RecordColumns.choice(
                SurfaceType.class,
                FileColumns.title(OfSurface.SURFACE_TYPE),
                line.text(FileColumns.title(OfSurface.SURFACE_TYPE)));
        Map<SurfaceAttribute, Integer> attributes = new EnumMap<>(SurfaceAttribute.class);
        for (SurfaceAttribute attribute : SurfaceAttribute.values()) {
            if (line.has(FileColumns.title(attribute))) {
                attributes.put(attribute, whole(attribute, line, 0));
            }
        }
        return new Surface(
                SurfaceId.next(),
                site == null ? SiteId.next() : site.id(),
                type,
                line.text(FileColumns.title(OfSurface.SURFACE)),
                Quantity.of(extent(line), unit(line, type)).bounded("extent"),
                whole(OfSurface.ROWS, line, type == SurfaceType.ARRAY ? 1 : 0),
                manufacturer(line),
                attributes,
                true,
                0);
    }

    private static Unit unit(Line line, SurfaceType type) {
        String title = FileColumns.title(OfSurface.UNIT);
        if (line.has(title)) {
            return Unit.ofCode(line.text(title).toUpperCase(Locale.ROOT));
        }
        if (type.units().size() > 1) {
            throw new CustomersRefusal.BadCell(title, "", "FTK or MTK");
        }
        return type.units().getFirst();
    }

    private @Nullable ManufacturerName manufacturer(Line line) {
        String title = FileColumns.title(OfSurface.PANEL_MANUFACTURER);
        if (!line.has(title)) {
            return null;
        }
        ManufacturerName written = new ManufacturerName(line.text(title));
        return manufacturers.stream()
                .filter(manufacturer -> manufacturer.value().equalsIgnoreCase(written.value()))
                .findFirst()
                .orElseThrow(() -> new KernelRefusal.NotFound("panel manufacturer", written)
                        .namedBy("panelManufacturer", "Add the manufacturer first"));
    }

    private static int whole(Enum<?> column, Line line, int otherwise) {
        String title = FileColumns.title(column);
        return line.has(title) ? RecordColumns.whole(title, line.text(title)) : otherwise;
    }

    private static BigDecimal extent(Line line) {
        String title = FileColumns.title(OfSurface.EXTENT);
        String text = Texts.optional(title, line.text(title), 30);
        if (!text.matches("[0-9]+(\\.[0-9]+)?")) {
            throw new CustomersRefusal.BadCell(title, text, "a number such as 48 or 12.5");
        }
        return new BigDecimal(text);
    }
}
