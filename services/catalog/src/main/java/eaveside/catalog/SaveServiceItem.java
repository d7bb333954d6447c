package eaveside.catalog;

import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.ServiceItemRow;
import eaveside.catalog.internal.ServiceLineRow;
import eaveside.catalog.internal.TaxCodeRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/** Adds a service, or changes one. */
@Dependent
public class SaveServiceItem {
    private final EntityManager entities;
    private final CatalogQueries queries;
    private final Clock clock;

    @Inject
    public SaveServiceItem(EntityManager entities, CatalogQueries queries, Clock clock) {
        this.entities = entities;
        this.queries = queries;
        this.clock = clock;
    }

    /**
     * Answers what is stored, with its version. Refuses a code that is taken, an unknown service line or tax code,
     * another unit or service line than was first saved, and an edit of a version that somebody else has saved over;
     * the same content again is a retry.
     */
    @Transactional
    public ServiceItem save(ServiceItem serviceItem, UserId by) {
        queries.takeTurn(CatalogQueries.CATALOG);
        ServiceItemRow row =
                entities.find(ServiceItemRow.class, serviceItem.id().value());
        if (row != null && row.toServiceItem().saysTheSameAs(serviceItem)) {
            return row.toServiceItem();
        }
        check(serviceItem, row == null ? null : row.toServiceItem());
        if (row == null) {
            row = new ServiceItemRow(serviceItem, by, clock.instant());
            entities.persist(row);
        } else {
            row.write(serviceItem, by, clock.instant());
        }
        entities.flush();
        return row.toServiceItem();
    }

    private void check(ServiceItem serviceItem, @Nullable ServiceItem stored) {
        if (stored == null && serviceItem.version() != 0) {
            throw new CatalogRefusal.NoSuchServiceItem(serviceItem.id().toString());
        }
        if (stored != null && stored.version() != serviceItem.version()) {
            throw new KernelRefusal.Stale(serviceItem.what(), serviceItem, stored);
        }
        if (stored != null && stored.unit() != serviceItem.unit()) {
            throw new CatalogRefusal.Fixed("unit");
        }
        if (stored != null && !stored.serviceLine().equals(serviceItem.serviceLine())) {
            throw new CatalogRefusal.Fixed("serviceLine");
        }
        if (entities.find(ServiceLineRow.class, serviceItem.serviceLine().value()) == null) {
            throw new CatalogRefusal.NoSuchServiceLine(serviceItem.serviceLine().toString());
        }
        if (entities.find(TaxCodeRow.class, serviceItem.taxCode().value()) == null) {
            throw new CatalogRefusal.NoSuchTaxCode(serviceItem.taxCode());
        }
        for (ServiceItemRow other : queries.serviceItemsCoded(serviceItem.code())) {
            if (!other.toServiceItem().id().equals(serviceItem.id())) {
                throw new CatalogRefusal.CodeTaken(
                        serviceItem.code(), other.toServiceItem().name());
            }
        }
    }
}
