package eaveside.visits.internal;

import eaveside.kernel.Decision;
import eaveside.ledger.DocumentView;
import eaveside.visits.JobSheet;
import eaveside.visits.SignedSheet;
import java.util.List;

/** Shows stored sheets. */
@Decision
public final class SheetView {
    private SheetView() {}

    public static SignedSheet of(
            SheetRow row, DocumentView document, List<VisitLineRow> extras, List<ScopeChangeRow> scopeChanges) {
        return new SignedSheet(
                document.posted(),
                row.visit(),
                row.signedBy(),
                row.completedOn(),
                row.location(),
                row.lines(),
                extras.stream()
                        .map(extra -> new JobSheet.Extra(
                                extra.id(), extra.serviceItem(), extra.surface(), extra.quantity(), extra.acceptedBy()))
                        .toList(),
                row.readings(),
                row.used(),
                row.count(),
                row.effort(),
                row.note(),
                row.overruns(),
                row.warnings(),
                scopeChanges.stream().map(ScopeChangeRow::toScopeChange).toList(),
                document.reversedBy());
    }
}
