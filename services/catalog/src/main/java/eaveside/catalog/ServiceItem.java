package eaveside.catalog;

import eaveside.customers.SurfaceType;
import eaveside.kernel.Quantity;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.StockItemId;
import eaveside.kernel.Texts;
import eaveside.kernel.Unit;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/**
 * A service as it is quoted, done and billed.
 *
 * @param  code           capitals, digits and hyphens, at most 20; unique
 * @param  unit           what it is counted in; never changes once saved, since prices and plans count in it
 * @param  minutesPerUnit labor minutes that one unit takes by the company's standard
 * @param  taxCode        under which of the owner's tax settings it falls
 * @param  surfaceType    the type of surface that it is done on, where it is done on a surface
 * @param  cautions       what the crew is to mind; printed on the job sheet
 * @param  consumables    what one unit uses up by the company's standard, each item once
 * @param  active         false once it is no longer sold
 * @param  version        see {@link Editable}
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
        String cautions,
        List<StandardConsumable> consumables,
        boolean active,
        int version)
        implements Editable {
    public ServiceItem {
        code = Codes.checked("code", code);
        name = Texts.required("name", name, 200);
        cautions = Texts.optional("cautions", cautions, 2000);
        if (surfaceType != null && surfaceType.units().stream().noneMatch(unit::isLike)) {
            throw new CatalogRefusal.UnitDoesNotFit(unit, surfaceType);
        }
        consumables = List.copyOf(consumables);
        Set<StockItemId> items =
                consumables.stream().map(StandardConsumable::item).collect(Collectors.toSet());
        if (items.size() < consumables.size()) {
            throw new CatalogRefusal.ItemTwice();
        }
    }

    /** Standard minutes of so much of it; the quantity may come in any unit of the same type. */
    public StandardMinutes minutesFor(Quantity quantity) {
        return minutesPerUnit.times(quantity.in(unit));
    }

    @Override
    public ServiceItem withVersion(int version) {
        return new ServiceItem(
                id,
                serviceLine,
                code,
                name,
                unit,
                minutesPerUnit,
                taxCode,
                surfaceType,
                cautions,
                consumables,
                active,
                version);
    }
}
