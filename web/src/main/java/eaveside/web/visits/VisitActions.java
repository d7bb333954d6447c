package eaveside.web.visits;

import eaveside.ledger.ReverseDocument.Reversal;
import eaveside.visits.CancelVisit;
import eaveside.visits.CloseUnbilled;
import eaveside.visits.DecideDifference;
import eaveside.visits.MoveVisit;
import eaveside.visits.ReverseVisitSheet;
import eaveside.web.security.Trail;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;

/** What the office does to a visit, with its line on the audit trail. */
@Dependent
class VisitActions {
    private final MoveVisit moveVisit;
    private final CancelVisit cancelVisit;
    private final DecideDifference decideDifference;
    private final CloseUnbilled closeUnbilled;
    private final ReverseVisitSheet reverseVisitSheet;
    private final Trail trail;

    @Inject
    VisitActions(
            MoveVisit moveVisit,
            CancelVisit cancelVisit,
            DecideDifference decideDifference,
            CloseUnbilled closeUnbilled,
            ReverseVisitSheet reverseVisitSheet,
            Trail trail) {
        this.moveVisit = moveVisit;
        this.cancelVisit = cancelVisit;
        this.decideDifference = decideDifference;
        this.closeUnbilled = closeUnbilled;
        this.reverseVisitSheet = reverseVisitSheet;
        this.trail = trail;
    }

    void move(MoveVisit.Move move) {
        moveVisit.move(move);
        trail.done("visit.move", move.visit());
    }

    void cancel(CancelVisit.Cancellation cancellation) {
        cancelVisit.cancel(cancellation);
        trail.done("visit.cancel", cancellation.visit());
    }

    void decide(DecideDifference.Decision decision) {
        decideDifference.decide(decision);
        trail.done("difference.decide", decision.difference());
    }

    void closeUnbilled(CloseUnbilled.Closing closing) {
        closeUnbilled.close(closing);
        trail.done("visit.close-unbilled", closing.visit());
    }

    void reverseSheet(Reversal reversal) {
        reverseVisitSheet.reverse(reversal);
        trail.done("sheet.reverse", reversal.original());
    }
}
