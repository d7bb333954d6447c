package eaveside.catalog;

import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.ServiceItemRow;
import eaveside.catalog.internal.ServiceLineRow;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;

/** Reads what the company sells. Lists hold what is no longer sold too, since old documents name it. */
@Dependent
public class Catalog {
    private final EntityManager entities;
    private final CatalogQueries queries;
    private final TaxSettings taxSettings;

    @Inject
    public Catalog(EntityManager entities, CatalogQueries queries, TaxSettings taxSettings) {
        this.entities = entities;
        this.queries = queries;
        this.taxSettings = taxSettings;
    }

    /** By code. */
    @Transactional
    public List<ServiceLine> lines() {
        return queries.lines().stream().map(ServiceLineRow::toServiceLine).toList();
    }

    @Transactional
    public ServiceLine line(ServiceLineId id) {
        ServiceLineRow row = entities.find(ServiceLineRow.class, id.value());
        if (row == null) {
            throw new CatalogRefusal.NoSuchServiceLine(id.toString());
        }
        return row.toServiceLine();
    }

    /** By code. */
    @Transactional
    public List<ServiceItem> serviceItems() {
        return queries.serviceItems().stream()
                .map(ServiceItemRow::toServiceItem)
                .toList();
    }

    @Transactional
    public ServiceItem serviceItem(ServiceItemId id) {
        ServiceItemRow row = entities.find(ServiceItemRow.class, id.value());
        if (row == null) {
            throw new CatalogRefusal.NoSuchServiceItem(id.toString());
        }
        return row.toServiceItem();
    }

    /** See {@link TaxSettings#on}. */
    @Transactional
    public TaxSetting tax(TaxCode code, LocalDate date) {
        return taxSettings.on(code, date);
    }
}
