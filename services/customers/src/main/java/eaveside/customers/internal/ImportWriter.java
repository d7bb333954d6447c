package eaveside.customers.internal;

import eaveside.customers.ImportReport;
import eaveside.customers.Surface;
import eaveside.kernel.UserId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.time.Clock;

/** Stores what a clean import plan holds. */
@Dependent
public class ImportWriter {
    private final EntityManager entities;
    private final Clock clock;

    @Inject
    public ImportWriter(EntityManager entities, Clock clock) {
        this.entities = entities;
        this.clock = clock;
    }

    public void write(ImportPlan plan, String fingerprint, UserId by) {
        Signature signature = Signature.of(by, clock.instant());
        ImportReport report = plan.report();
        entities.persist(new ImportRow(fingerprint, report, signature));
        // Each type is flushed before the next, which points to it.
        plan.customers().forEach(customer -> entities.persist(new CustomerRow(customer, signature)));
        entities.flush();
        plan.sites().forEach(site -> entities.persist(new SiteRow(site, signature)));
        entities.flush();
        plan.surfaces().forEach(surface -> entities.persist(new SurfaceRow(surface, signature)));
        entities.flush();
        for (Surface surface : plan.surfaces()) {
            entities.persist(new SurfaceCountRow(surface.id(), 1, null, surface.extent(), null, signature));
        }
        entities.flush();
    }
}
