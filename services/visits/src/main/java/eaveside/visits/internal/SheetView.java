package eaveside.visits.internal;

import eaveside.ledger.ReadLedger.DocumentView;
import eaveside.visits.ReadSheets.DeclaredCount;
import eaveside.visits.SignedSheet;
import eaveside.visits.VisitRefusal;
import eaveside.visits.VisitSheet;
import java.util.List;

/** Shows stored sheets. */
public final class SheetView {
    private SheetView() {}

    public static SignedSheet of(
            SheetRow row, DocumentView document, List<VisitLineRow> extras, List<DifferenceRow> differences) {
        return new SignedSheet(
                document.posted(),
                row.visit(),
                row.signedBy(),
                row.doneOn(),
                row.place(),
                row.lines(),
                extras.stream()
                        .map(extra -> new VisitSheet.Extra(
                                extra.id(), extra.offering(), extra.surface(), extra.quantity(), extra.agreedBy()))
                        .toList(),
                row.readings(),
                row.used(),
                row.count(),
                row.effort(),
                row.note(),
                row.overruns(),
                row.warnings(),
                differences.stream().map(DifferenceRow::toDifference).toList(),
                document.reversedBy());
    }

    /** Refuses a sheet that declared none. */
    public static DeclaredCount declared(SheetRow row) {
        VisitSheet.Declared declared = row.count();
        if (declared == null) {
            throw new VisitRefusal.NothingCounted();
        }
        return new DeclaredCount(row.document(), row.visit(), row.signedBy(), row.doneOn(), declared);
    }
}
