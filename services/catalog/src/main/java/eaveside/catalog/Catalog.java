package eaveside.catalog;

import eaveside.access.Edits;
import eaveside.catalog.internal.CatalogQueries;
import eaveside.catalog.internal.ServiceItemRow;
import eaveside.catalog.internal.ServiceLineRow;
import eaveside.kernel.ServiceItemId;
import eaveside.kernel.ServiceLineId;
import eaveside.kernel.Shared;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;

/** Reads what the company sells. Lists hold what is no longer sold too, since old documents name it. */
@Shared
public class Catalog {
    private final Edits edits;
    private final CatalogQueries queries;
    private final TaxSettings taxSettings;

    @Inject
    public Catalog(Edits edits, CatalogQueries queries, TaxSettings taxSettings) {
        this.edits = edits;
        this.queries = queries;
        this.taxSettings = taxSettings;
    }

    /** By code. */
    @Transactional
    public List<ServiceLine> lines() {
        return queries.lines().stream().map(ServiceLineRow::content).toList();
    }

    @Transactional
    public ServiceLine line(ServiceLineId id) {
        return edits.read(ServiceLineRow.class, id, "service line");
    }

    /** By code. */
    @Transactional
    public List<ServiceItem> serviceItems() {
        return queries.serviceItems().stream().map(ServiceItemRow::content).toList();
    }

    @Transactional
    public ServiceItem serviceItem(ServiceItemId id) {
        return edits.read(ServiceItemRow.class, id, "service");
    }

    /** See {@link TaxSettings#on}. */
    @Transactional
    public TaxSetting tax(TaxCode code, LocalDate date) {
        return taxSettings.on(code, date);
    }
}
