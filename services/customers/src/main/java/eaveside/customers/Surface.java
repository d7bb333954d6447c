package eaveside.customers;

import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Unit;
import eaveside.kernel.Versioned;
import java.math.BigDecimal;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One surface of a site that is cleaned and priced as a whole: an array of 48 panels, 6 skylights, 1,900 ft² of roof.
 *
 * @param  extent      how much of it there is, in a unit of its type; pieces are whole
 * @param  rows        how many rows an array stands in, at least 1, and 1 where none are named; 0 for other types
 * @param  panelManufacturer who made an array's modules, where that is known; sets the limits for washing them
 * @param  attributes  what is known of it; those not known are absent
 * @param  active      false once it is gone
 * @param  version     see {@link Versioned}
 */
public record Surface(
        SurfaceId id,
        SiteId site,
        SurfaceType type,
        String name,
        Quantity extent,
        @Default("0") int rows,
        @Nullable ManufacturerName panelManufacturer,
        @Default Map<SurfaceAttribute, Integer> attributes,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public Surface {
        Check check = new Check();
        name = check.required("name", name, 200);
        rows = type == SurfaceType.ARRAY && rows == 0 ? 1 : rows;
        int stated = rows;
        check.value(() -> counted(type, extent, stated), extent);
        check.that(
                panelManufacturer == null || type == SurfaceType.ARRAY,
                () -> new CustomersRefusal.NotForThisType("panelManufacturer", type));
        // In the enum's order whatever the caller's map, so that equal surfaces also read the same.
        EnumMap<SurfaceAttribute, Integer> sorted = new EnumMap<>(SurfaceAttribute.class);
        sorted.putAll(attributes);
        sorted.forEach((attribute, value) -> check(check, type, attribute, value));
        check.done();
        attributes = Collections.unmodifiableMap(sorted);
    }

    /** Rows are judged only of an extent that can be. */
    private static Quantity counted(SurfaceType type, Quantity extent, int rows) {
        checkExtent(type, extent);
        checkRows(type, extent, rows);
        return extent;
    }

    private static void checkExtent(SurfaceType type, Quantity extent) {
        if (!type.units().contains(extent.unit())) {
            throw new KernelRefusal.WrongUnit(
                    "extent", "a surface of type " + type.name().toLowerCase(Locale.ROOT), extent.unit(), type.units());
        }
        if (!extent.isPositive()) {
            throw new KernelRefusal.NotPositive("extent");
        }
        if (extent.unit() == Unit.PIECE && extent.value().scale() > 0) {
            throw new KernelRefusal.NotWhole("extent", extent);
        }
    }

    private static void checkRows(SurfaceType type, Quantity extent, int rows) {
        if (type != SurfaceType.ARRAY) {
            if (rows != 0) {
                throw new CustomersRefusal.NotForThisType("rows", type);
            }
        } else if (rows < 1 || extent.value().compareTo(BigDecimal.valueOf(rows)) < 0) {
            throw new KernelRefusal.OutOfRange("rows", rows, 1, extent.value().intValue());
        }
    }

    private static void check(Check check, SurfaceType type, SurfaceAttribute attribute, int value) {
        check.that(attribute.appliesTo(type), () -> new CustomersRefusal.NotForThisType(attribute.name(), type));
        if (attribute.appliesTo(type)) {
            check.between(attribute.name(), value, attribute.lowest(), attribute.highest());
        }
    }

    @Override
    public Surface withVersion(int version) {
        return Records.with(this, "version", version);
    }

    /** The same surface, counted again. An array never keeps more rows than panels. */
    public Surface withExtent(Quantity counted) {
        checkExtent(type, counted);
        Surface kept = Records.with(
                this,
                "rows",
                type == SurfaceType.ARRAY ? Math.min(rows, counted.value().intValue()) : 0);
        return Records.with(kept, "extent", counted);
    }
}
