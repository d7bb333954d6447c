package eaveside.offerings;

import eaveside.kernel.OfferingId;
import eaveside.kernel.ServiceLineId;
import eaveside.offerings.internal.OfferingRow;
import eaveside.offerings.internal.OfferingsQueries;
import eaveside.offerings.internal.ServiceLineRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;

/** Reads what the company sells. Lists hold what is no longer sold too, since old documents name it. */
@Dependent
public class Catalogue {
    private final EntityManager entities;
    private final OfferingsQueries queries;
    private final TaxSettings taxSettings;

    @Inject
    public Catalogue(EntityManager entities, OfferingsQueries queries, TaxSettings taxSettings) {
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
            throw new OfferingsRefusal.NoSuchServiceLine(id.toString());
        }
        return row.toServiceLine();
    }

    /** By code. */
    @Transactional
    public List<Offering> offerings() {
        return queries.offerings().stream().map(OfferingRow::toOffering).toList();
    }

    @Transactional
    public Offering offering(OfferingId id) {
        OfferingRow row = entities.find(OfferingRow.class, id.value());
        if (row == null) {
            throw new OfferingsRefusal.NoSuchOffering(id.toString());
        }
        return row.toOffering();
    }

    /** See {@link TaxSettings#on}. */
    @Transactional
    public TaxSetting tax(TaxCode code, LocalDate date) {
        return taxSettings.on(code, date);
    }
}
