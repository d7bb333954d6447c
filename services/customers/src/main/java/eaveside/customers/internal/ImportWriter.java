package eaveside.customers.internal;

import eaveside.customers.Surface;
import eaveside.customers.SurfaceCount;
import eaveside.kernel.EditedRow;
import eaveside.kernel.Id;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.Versioned;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;
import java.time.Instant;

/** Stores what a clean import plan holds. */
@Shared
public class ImportWriter {
    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public ImportWriter(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    public void write(ImportPlan plan, String fingerprint, UserId by) {
        Instant now = clock.instant();
        entities.persist(new ImportRow(fingerprint, plan.report(), by, now));
        // Each type is flushed before the next, which points to it.
        plan.customers().forEach(customer -> begin(new CustomerRow(), customer.id(), customer, by, now));
        entities.flush();
        plan.sites().forEach(site -> begin(new SiteRow(), site.id(), site, by, now));
        entities.flush();
        plan.surfaces().forEach(surface -> begin(new SurfaceRow(), surface.id(), surface, by, now));
        entities.flush();
        for (Surface surface : plan.surfaces()) {
            entities.persist(
                    new SurfaceCountRow(new SurfaceCount(surface.id(), null, surface.extent(), null, by, now), 1));
        }
        entities.flush();
    }

    private <T extends Record & Versioned> void begin(EditedRow<T> row, Id id, T content, UserId by, Instant at) {
        row.begin(id.value(), content, by, at);
        entities.persist(row);
    }
}
