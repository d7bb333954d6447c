package eaveside.visits;

import eaveside.costing.Effort;
import eaveside.inventory.Drawn;
import eaveside.kernel.DocumentId;
import eaveside.kernel.LocationId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Posted;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A sheet as it was signed off. Its findings are the visit's; what it cost is not on it, since technicians read it.
 *
 * @param  reversedBy the document that reversed it; absent while the visit stands on it
 * @param  overruns   canisters that still made pure water when the books had used them up
 * @param  warnings   about alkaline soap on modules whose manufacturer forbids it
 */
public record SignedSheet(
        Posted posted,
        VisitId visit,
        UserId by,
        LocalDate completedOn,
        @Nullable LocationId location,
        List<JobSheet.DoneLine> lines,
        List<JobSheet.Extra> extras,
        List<JobSheet.Reading> readings,
        List<JobSheet.Used> used,
        JobSheet.@Nullable Declared count,
        Effort effort,
        String note,
        List<Drawn.Overrun> overruns,
        List<SoapWarning> warnings,
        List<ScopeChange> scopeChanges,
        @Nullable DocumentId reversedBy) {
    public SignedSheet {
        lines = List.copyOf(lines);
        extras = List.copyOf(extras);
        readings = List.copyOf(readings);
        used = List.copyOf(used);
        overruns = List.copyOf(overruns);
        warnings = List.copyOf(warnings);
        scopeChanges = List.copyOf(scopeChanges);
    }
}
