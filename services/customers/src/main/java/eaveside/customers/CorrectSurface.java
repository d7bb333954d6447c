package eaveside.customers;

import eaveside.access.Edits;
import eaveside.customers.internal.SurfaceCounts;
import eaveside.customers.internal.SurfaceRow;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Quantity;
import eaveside.kernel.Shared;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.Clock;
import java.time.Instant;

/**
 * Brings surfaces in line with what the crew found on site; part of signing off a job sheet. Surfaces that a visit
 * corrects are to be corrected in the order of their ids, so that two visits never wait for one another.
 */
@Shared
public class CorrectSurface {
    private final Edits edits;
    private final SurfaceCounts counts;
    private final SaveSurface saveSurface;
    private final Clock clock;

    @Inject
    public CorrectSurface(Edits edits, SurfaceCounts counts, SaveSurface saveSurface, Clock clock) {
        this.clock = clock;
        this.edits = edits;
        this.counts = counts;
        this.saveSurface = saveSurface;
    }

    /** A surface counted again on a visit. */
    public record Correction(SurfaceId surface, Quantity extent, VisitId visit, UserId by) {}

    /** A surface that nobody had listed, found on a visit. */
    public record Find(Surface surface, VisitId visit, UserId by) {}

    /**
     * Gives the surface its new extent, whatever its version, and answers it; the old extent stays in its history. An
     * array keeps no more rows than it has panels. The same extent again changes nothing. Refuses an unknown surface,
     * one that is no longer active, and an extent that does not fit its type.
     */
    @Transactional(Transactional.TxType.MANDATORY)
    public Surface correct(Correction correction) {
        SurfaceRow row = edits.locked(SurfaceRow.class, correction.surface());
        if (row == null) {
            throw new KernelRefusal.NotFound("surface", correction.surface());
        }
        Surface before = row.content();
        if (before.extent().equals(correction.extent())) {
            return before;
        }
        if (!before.active()) {
            throw new KernelRefusal.NotActive("surface", before.name(), "surface");
        }
        Instant now = clock.instant();
        row.write(before.withExtent(correction.extent()), correction.by(), now);
        counts.note(new SurfaceCount(
                before.id(), before.extent(), correction.extent(), correction.visit(), correction.by(), now));
        return row.content();
    }

    /** Adds the surface, with the visit that found it in its history; refuses as {@link SaveSurface} does. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Surface add(Find found) {
        return saveSurface.save(found.surface(), found.by(), found.visit());
    }
}
