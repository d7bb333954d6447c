package eaveside.customers;

import eaveside.customers.internal.Edits;
import eaveside.customers.internal.Signature;
import eaveside.customers.internal.SurfaceCounts;
import eaveside.customers.internal.SurfaceRow;
import eaveside.kernel.Quantity;
import eaveside.kernel.SurfaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;

/**
 * Brings surfaces in line with what the crew found on site; part of signing off a job sheet. Surfaces that a visit
 * corrects are to be corrected in the order of their ids, so that two visits never wait for one another.
 */
@Dependent
public class CorrectSurface {
    private final Edits edits;
    private final SurfaceCounts counts;
    private final SaveSurface saveSurface;

    @Inject
    public CorrectSurface(Edits edits, SurfaceCounts counts, SaveSurface saveSurface) {
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
        SurfaceRow row = edits.locked(SurfaceRow.class, correction.surface().value());
        if (row == null) {
            throw new CustomersRefusal.NoSuchSurface(correction.surface().toString());
        }
        Surface before = row.content();
        if (before.extent().equals(correction.extent())) {
            return before;
        }
        if (!before.active()) {
            throw new CustomersRefusal.NotActive(before.name());
        }
        Signature signature = edits.signature(correction.by());
        row.write(before.withExtent(correction.extent()), signature);
        counts.note(before.id(), before.extent(), correction.extent(), correction.visit(), signature);
        return row.content();
    }

    /** Adds the surface, with the visit that found it in its history; refuses as {@link SaveSurface} does. */
    @Transactional(Transactional.TxType.MANDATORY)
    public Surface add(Find found) {
        return saveSurface.save(found.surface(), found.by(), found.visit());
    }
}
