package eaveside.catalog;

import eaveside.access.Edits;
import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.ServiceItemRow;
import eaveside.catalog.internal.ServiceLineRow;
import eaveside.catalog.internal.TaxCodeRow;
import eaveside.inventory.ReadStock;
import eaveside.inventory.StockItem;
import eaveside.kernel.Elements;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Shared;
import eaveside.kernel.StockItemId;
import eaveside.kernel.UserId;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Adds a service, or changes one. */
@Shared
public class SaveServiceItem {
    private final Edits edits;
    private final EntityManager entities;
    private final CatalogQueries queries;
    private final ReadStock readStock;

    @Inject
    public SaveServiceItem(Edits edits, EntityManager entities, CatalogQueries queries, ReadStock readStock) {
        this.edits = edits;
        this.entities = entities;
        this.queries = queries;
        this.readStock = readStock;
    }

    /**
     * Answers what is stored, with its version. Refuses a code that another has, an unknown service line, tax code or
     * consumable, more minutes than a visit has, a consumable in a unit that is not like its own, another unit or service
     * line than was first saved, and what {@link Edits} refuses.
     */
    @Transactional
    public ServiceItem save(ServiceItem service, UserId by) {
        queries.takeTurn(CatalogQueries.CATALOG);
        return edits.save(ServiceItemRow.class, service.id(), service, by, stored -> check(service, stored));
    }

    private void check(ServiceItem service, @Nullable ServiceItem stored) {
        if (stored != null && stored.unit() != service.unit()) {
            throw new KernelRefusal.Fixed("service", "unit");
        }
        if (stored != null && !stored.serviceLine().equals(service.serviceLine())) {
            throw new KernelRefusal.Fixed("service", "serviceLine");
        }
        if (service.minutesPerUnit().compareTo(StandardMinutes.MOST) > 0) {
            throw new KernelRefusal.TooLarge(
                    "minutesPerUnit", service.minutesPerUnit().toString());
        }
        if (entities.find(ServiceLineRow.class, service.serviceLine().value()) == null) {
            throw new KernelRefusal.NotFound("service line", service.serviceLine()).namedBy("serviceLine");
        }
        if (entities.find(TaxCodeRow.class, service.taxCode().value()) == null) {
            throw TaxSettings.unknown(service.taxCode());
        }
        for (ServiceItemRow other : queries.serviceItemsCoded(service.code())) {
            if (!other.content().id().equals(service.id())) {
                throw new KernelRefusal.Taken("service", "code", service.code());
            }
        }
        checkConsumables(service);
    }

    private void checkConsumables(ServiceItem service) {
        if (service.consumables().isEmpty()) {
            return;
        }
        Map<StockItemId, StockItem> items =
                readStock.items().stream().collect(Collectors.toMap(StockItem::id, Function.identity()));
        Elements.each("consumables", service.consumables(), (consumable, i) -> {
            StockItem item = items.get(consumable.item());
            if (item == null) {
                throw new KernelRefusal.NotFound("stock item", consumable.item())
                        .namedBy("item", "Add the item to stock first");
            }
            if (!consumable.perUnit().unit().isLike(item.baseUnit())) {
                throw new KernelRefusal.WrongUnit(
                        "perUnit", item.name(), consumable.perUnit().unit(), List.of(item.baseUnit()));
            }
        });
    }
}
