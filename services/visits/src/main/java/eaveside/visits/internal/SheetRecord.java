package eaveside.visits.internal;

import eaveside.inventory.Drawn;
import eaveside.kernel.LocationId;
import eaveside.kernel.Shared;
import eaveside.visits.JobSheet;
import eaveside.visits.SoapWarning;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Keeps a posted sheet as it was signed, with its extras and the scope changes that it opens. */
@Shared
public class SheetRecord {
    private final EntityManager entities;

    @Inject
    public SheetRecord(EntityManager entities) {
        this.entities = entities;
    }

    /** In the transaction that posts the sheet, once its document and findings stand. */
    public void save(
            JobSheet sheet,
            @Nullable LocationId location,
            ScopeChanges scope,
            List<VisitLineRow> extras,
            SheetCost cost,
            List<Drawn.Overrun> overruns,
            List<SoapWarning> warnings) {
        entities.persist(new SheetRow(sheet, location, scope, cost, overruns, warnings));
        // Plain ids: each must stand before the next points at it.
        entities.flush();
        extras.forEach(entities::persist);
        entities.flush();
        int position = 0;
        for (ScopeChanges.Found found : scope.found()) {
            entities.persist(new ScopeChangeRow(sheet.visit(), sheet.id(), position++, found));
        }
        entities.flush();
    }
}
