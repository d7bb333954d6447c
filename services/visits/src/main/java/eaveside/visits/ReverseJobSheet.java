package eaveside.visits;

import eaveside.findings.WithdrawFindings;
import eaveside.inventory.ReverseStockDocument;
import eaveside.kernel.Shared;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.internal.SheetRow;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/**
 * Reverses a wrong sheet in full, once, before its visit is billed: money and stock are mirrored, its findings withdrawn,
 * and the visit waits as planned for the sheet to be entered again. A count that was declared with it stays, and so do
 * the surfaces as counted: both say what is really there, and have corrections of their own.
 */
@Shared
public class ReverseJobSheet {
    private final Visits visits;
    private final Posting posting;
    private final ReverseDocument reverseDocument;
    private final ReverseStockDocument reverseStock;
    private final WithdrawFindings withdrawFindings;

    @Inject
    public ReverseJobSheet(
            Visits visits,
            Posting posting,
            ReverseDocument reverseDocument,
            ReverseStockDocument reverseStock,
            WithdrawFindings withdrawFindings) {
        this.visits = visits;
        this.posting = posting;
        this.reverseDocument = reverseDocument;
        this.reverseStock = reverseStock;
        this.withdrawFindings = withdrawFindings;
    }

    /**
     * The same reversal again is a retry. Refuses a sheet that its visit no longer stands on, and a visit that is billed
     * or closed: credit the invoice, or reverse the closing, first.
     */
    @Transactional
    public Posted reverse(Reversal reversal) {
        List<Lock> locks = List.of(
                Lock.of(
                        Lock.Rank.RECORD,
                        () -> visits.locked(visits.sheet(reversal.original()).visit())),
                reverseStock.lockOf(reversal.original()));
        return posting.post("visit.sheet-reversed", reversal, locks, day -> {
            SheetRow sheet = visits.sheet(reversal.original());
            VisitRow visit = visits.locked(sheet.visit());
            visit.requireStatus(VisitStatus.COMPLETED);
            visit.requireStandsOn(sheet.document());
            Decided mirror = reverseDocument.reversed(DocumentType.REVERSAL, reversal);
            return reverseStock
                    .mirrored(sheet.document(), mirror)
                    .about(visit.id())
                    .then(posted -> {
                        withdrawFindings.ofVisit(visit.id(), reversal.by());
                        visit.reopen();
                    });
        });
    }
}
