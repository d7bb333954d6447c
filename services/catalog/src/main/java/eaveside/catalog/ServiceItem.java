package eaveside.catalog;

import eaveside.customers.SurfaceType;
import eaveside.kernel.Check;
import eaveside.kernel.Default;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Records;
import eaveside.kernel.Refusal;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Unit;
import eaveside.kernel.Versioned;
import java.util.List;
import java.util.Locale;
import org.jspecify.annotations.Nullable;

/**
 * A service as it is quoted, done and billed.
 *
 * @param  serviceLine    never changes once saved, since entries name it
 * @param  code           capitals, digits and hyphens, at most 20; unique
 * @param  unit           what it is counted in; never changes once saved, since prices and plans count in it
 * @param  minutesPerUnit labor minutes that one unit takes by the company's standard
 * @param  taxCode        under which of the owner's tax settings it falls
 * @param  surfaceType    the type of surface that it is done on, where it is done on a surface
 * @param  cautions       what the crew is to mind; printed on the job sheet
 * @param  consumables    what one unit uses up by the company's standard, each item once
 * @param  active         false once it is no longer sold
 */
public record ServiceItem(
        ServiceItemId id,
        ServiceLineId serviceLine,
        String code,
        String name,
        Unit unit,
        StandardMinutes minutesPerUnit,
        TaxCode taxCode,
        @Nullable SurfaceType surfaceType,
        @Default String cautions,
        @Default List<StandardConsumable> consumables,
        @Default("true") boolean active,
        @Default("0") int version)
        implements Versioned {
    public ServiceItem {
        Check check = new Check();
        String typed = code;
        code = check.value(() -> Codes.checked("code", typed), "");
        name = check.required("name", name, 200);
        cautions = check.optional("cautions", cautions, 2000);
        SurfaceType surfaces = surfaceType;
        check.that(
                surfaces == null || surfaces.units().stream().anyMatch(unit::isLike),
                () -> wrongUnit(unit, surfaces == null ? SurfaceType.ARRAY : surfaces));
        List<StandardConsumable> used = List.copyOf(consumables);
        check.passes(() -> Elements.requireDistinct("consumables", used, "item", StandardConsumable::item));
        consumables = used;
        check.done();
    }

    private static Refusal wrongUnit(Unit unit, SurfaceType type) {
        String surfaces = "surfaces of type " + type.name().toLowerCase(Locale.ROOT);
        return new KernelRefusal.WrongUnit("unit", surfaces, unit, type.units());
    }

    /** Standard minutes of so much of it; the quantity may come in any unit of the same type. */
    public StandardMinutes minutesFor(Quantity quantity) {
        return minutesPerUnit.times(quantity.in(unit));
    }

    @Override
    public String what() {
        return "service";
    }

    @Override
    public ServiceItem withVersion(int other) {
        return Records.with(this, "version", other);
    }
}
