package eaveside.customers;

import eaveside.access.Edits;
import eaveside.customers.internal.SurfaceCounts;
import eaveside.customers.internal.SurfaceRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import org.jspecify.annotations.Nullable;

/** Adds a surface to a site, or changes one. A changed extent goes into the surface's history. */
@Shared
public class SaveSurface {
    private final Edits edits;
    private final SurfaceCounts counts;
    private final ReadCustomer readCustomer;
    private final ReadPanelManufacturers readPanelManufacturers;
    private final Clock clock;

    @Inject
    public SaveSurface(
            Edits edits,
            SurfaceCounts counts,
            ReadCustomer readCustomer,
            ReadPanelManufacturers readPanelManufacturers,
            Clock clock) {
        this.edits = edits;
        this.counts = counts;
        this.readCustomer = readCustomer;
        this.readPanelManufacturers = readPanelManufacturers;
        this.clock = clock;
    }

    /**
     * Answers what is stored, with its version. Refuses what {@link Edits} refuses, an unknown site or panel manufacturer,
     * and another site or type than was first saved.
     */
    @Transactional
    public Surface save(Surface surface, UserId by) {
        return save(surface, by, null);
    }

    Surface save(Surface surface, UserId by, @Nullable VisitId visit) {
        SurfaceRow before = edits.locked(SurfaceRow.class, surface.id());
        Quantity counted = before == null ? null : before.content().extent();
        Surface saved = edits.save(SurfaceRow.class, surface.id(), surface, by, stored -> check(surface, stored));
        counts.note(new SurfaceCount(saved.id(), counted, saved.extent(), visit, by, clock.instant()));
        return saved;
    }

    private void check(Surface surface, @Nullable Surface stored) {
        if (stored != null && !stored.site().equals(surface.site())) {
            throw new KernelRefusal.Fixed("surface", "site");
        }
        if (stored != null && stored.type() != surface.type()) {
            throw new KernelRefusal.Fixed("surface", "type");
        }
        readCustomer.site(surface.site());
        ManufacturerName manufacturer = surface.panelManufacturer();
        if (manufacturer != null) {
            readPanelManufacturers.manufacturer(manufacturer);
        }
    }
}
