package eaveside.offerings;

import eaveside.kernel.KernelRefusal;
import eaveside.kernel.UserId;
import eaveside.offerings.internal.OfferingRow;
import eaveside.offerings.internal.OfferingsQueries;
import eaveside.offerings.internal.ServiceLineRow;
import eaveside.offerings.internal.TaxCodeRow;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/** Adds an offering, or changes one. */
@Dependent
public class SaveOffering {
    private final EntityManager entities;
    private final OfferingsQueries queries;
    private final Clock clock;

    @Inject
    public SaveOffering(EntityManager entities, OfferingsQueries queries, Clock clock) {
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
    public Offering save(Offering offering, UserId by) {
        queries.takeTurn(OfferingsQueries.CATALOGUE);
        OfferingRow row = entities.find(OfferingRow.class, offering.id().value());
        if (row != null && row.toOffering().saysTheSameAs(offering)) {
            return row.toOffering();
        }
        check(offering, row == null ? null : row.toOffering());
        if (row == null) {
            row = new OfferingRow(offering, by, clock.instant());
            entities.persist(row);
        } else {
            row.write(offering, by, clock.instant());
        }
        entities.flush();
        return row.toOffering();
    }

    private void check(Offering offering, @Nullable Offering stored) {
        if (stored == null && offering.version() != 0) {
            throw new OfferingsRefusal.NoSuchOffering(offering.id().toString());
        }
        if (stored != null && stored.version() != offering.version()) {
            throw new KernelRefusal.Stale(offering.what(), offering, stored);
        }
        if (stored != null && stored.unit() != offering.unit()) {
            throw new OfferingsRefusal.Fixed("unit");
        }
        if (stored != null && !stored.serviceLine().equals(offering.serviceLine())) {
            throw new OfferingsRefusal.Fixed("serviceLine");
        }
        if (entities.find(ServiceLineRow.class, offering.serviceLine().value()) == null) {
            throw new OfferingsRefusal.NoSuchServiceLine(offering.serviceLine().toString());
        }
        if (entities.find(TaxCodeRow.class, offering.taxCode().value()) == null) {
            throw new OfferingsRefusal.NoSuchTaxCode(offering.taxCode());
        }
        for (OfferingRow other : queries.offeringsCoded(offering.code())) {
            if (!other.toOffering().id().equals(offering.id())) {
                throw new OfferingsRefusal.CodeTaken(
                        offering.code(), other.toOffering().name());
            }
        }
    }
}
