package eaveside.visits;

import eaveside.costing.Effort;
import eaveside.inventory.Drawn;
import eaveside.kernel.DocumentId;
import eaveside.kernel.PlaceId;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.Posted;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A sheet as it was signed off. Its findings are the visit's; what it cost is not on it, since technicians read it.
 *
 * @param reversedBy the document that reversed it; absent while the visit stands on it
 * @param overruns   canisters that still made pure water when the books had used them up
 * @param warnings   about alkaline soap on modules whose maker forbids it
 */
public record SignedSheet(
        Posted posted,
        VisitId visit,
        UserId by,
        LocalDate doneOn,
        @Nullable PlaceId place,
        List<VisitSheet.DoneLine> lines,
        List<VisitSheet.Extra> extras,
        List<VisitSheet.Reading> readings,
        List<VisitSheet.Used> used,
        VisitSheet.@Nullable Declared count,
        Effort effort,
        String note,
        List<Drawn.Overrun> overruns,
        List<SoapWarning> warnings,
        List<Difference> differences,
        @Nullable DocumentId reversedBy) {
    public SignedSheet {
        lines = List.copyOf(lines);
        extras = List.copyOf(extras);
        readings = List.copyOf(readings);
        used = List.copyOf(used);
        overruns = List.copyOf(overruns);
        warnings = List.copyOf(warnings);
        differences = List.copyOf(differences);
    }
}
