package eaveside.customers;

import eaveside.kernel.Default;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.SiteId;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.Texts;
import eaveside.kernel.Unit;
import java.util.Collections;
import java.util.EnumMap;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/**
 * One surface of a site that is cleaned and priced as a whole: an array of 48 panels, 6 skylights, 1,900 ft² of roof.
 *
 * @param extent      how much of it there is, in a unit of its kind; pieces are whole
 * @param rows        how many rows an array stands in, at least 1, and 1 where none are named; 0 for other kinds
 * @param moduleMaker who made an array's modules, where that is known; sets the limits for washing them
 * @param attributes  what is known of it; those not known are absent
 * @param active      false once it is gone
 * @param version     see {@link Editable}
 */
public record Surface(
        SurfaceId id,
        SiteId siteId,
        SurfaceKind kind,
        String name,
        Quantity extent,
        @Default("0") int rows,
        @Nullable MakerName moduleMaker,
        @Default Map<SurfaceAttribute, Integer> attributes,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Editable {
    public Surface {
        name = Texts.required("name", name, 200);
        checkExtent(kind, extent);
        rows = kind == SurfaceKind.ARRAY && rows == 0 ? 1 : rows;
        checkRows(kind, extent, rows);
        if (moduleMaker != null && kind != SurfaceKind.ARRAY) {
            throw new CustomersRefusal.NotForThisKind("moduleMaker", kind);
        }
        // In the enum's order whatever the caller's map, so that equal surfaces also read the same.
        EnumMap<SurfaceAttribute, Integer> sorted = new EnumMap<>(SurfaceAttribute.class);
        sorted.putAll(attributes);
        sorted.forEach((attribute, value) -> check(kind, attribute, value));
        attributes = Collections.unmodifiableMap(sorted);
    }

    private static void checkExtent(SurfaceKind kind, Quantity extent) {
        if (!kind.units().contains(extent.unit())) {
            throw new CustomersRefusal.UnitDoesNotFit(kind, extent.unit());
        }
        if (!extent.isPositive()) {
            throw new KernelRefusal.NotPositive("extent");
        }
        if (extent.unit() == Unit.PIECE && extent.value().scale() > 0) {
            throw new CustomersRefusal.NotWhole(extent);
        }
    }

    private static void checkRows(SurfaceKind kind, Quantity extent, int rows) {
        if (kind != SurfaceKind.ARRAY) {
            if (rows != 0) {
                throw new CustomersRefusal.NotForThisKind("rows", kind);
            }
        } else if (rows < 1 || extent.value().intValue() < rows) {
            throw new CustomersRefusal.OutOfRange(
                    "rows", rows, 1, extent.value().intValue());
        }
    }

    private static void check(SurfaceKind kind, SurfaceAttribute attribute, int value) {
        if (!attribute.appliesTo(kind)) {
            throw new CustomersRefusal.NotForThisKind(attribute.name(), kind);
        }
        if (value < attribute.lowest() || value > attribute.highest()) {
            throw new CustomersRefusal.OutOfRange(attribute.name(), value, attribute.lowest(), attribute.highest());
        }
    }

    @Override
    public Surface withVersion(int version) {
        return Records.with(this, "version", version);
    }

    /** The same surface, counted again. An array never keeps more rows than panels. */
    public Surface withExtent(Quantity counted) {
        checkExtent(kind, counted);
        int kept = Math.min(rows, counted.value().intValue());
        return new Surface(
                id,
                siteId,
                kind,
                name,
                counted,
                kind == SurfaceKind.ARRAY ? kept : 0,
                moduleMaker,
                attributes,
                active,
                version);
    }
}
