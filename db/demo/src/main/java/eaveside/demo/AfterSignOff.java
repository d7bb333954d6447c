package eaveside.demo;

import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.IssuedInvoice;
import eaveside.kernel.FindingId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.VisitId;
import eaveside.visits.ScopeChange;
import eaveside.visits.ScopeChangeType;
import eaveside.visits.ScopeDecision;
import eaveside.visits.SkipReason;
import eaveside.visits.Visit;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.time.LocalTime;

/** What follows a signed sheet: differences are decided, the visit is billed, findings are followed up. */
@Dependent
class AfterSignOff {
    private static final int BILLED_TWICE = 15;
    private static final int TAKEN_BACK = 33;

    private final Visiting visiting;
    private final Billing billing;
    private final CustomerPayments payments;
    private final FollowUp followUp;
    private int issued;

    @Inject
    AfterSignOff(Visiting visiting, Billing billing, CustomerPayments payments, FollowUp followUp) {
        this.visiting = visiting;
        this.billing = billing;
        this.payments = payments;
        this.followUp = followUp;
    }

    /** New work that follows from a visit. */
    interface Schedules {
        void returnVisit(Scene scene, Slot slot, VisitId first);

        void offerWork(Scene scene, Slot slot, Sheets.Seen seen);
    }

    void note(Scene scene, Slot slot, VisitId visit, Sheets.Signed sheet, Schedules schedules) {
        scene.agenda().noteAfter(daysOnDesk(scene, visit), 10, () -> settle(scene, slot, visit, schedules));
        for (Sheets.Seen seen : sheet.seen()) {
            boolean left = scene.dice().percent(20)
                    && scene.day().plusDays(30).isAfter(scene.agenda().today());
            if (!left) {
                scene.agenda().noteAfter(scene.dice().between(1, 5), 11, () -> answer(scene, slot, seen, schedules));
            }
        }
    }

    /** Of late, extras are looked at first and the rest waits. */
    private int daysOnDesk(Scene scene, VisitId visit) {
        if (!scene.isLately()) {
            return scene.dice().between(1, 3);
        }
        boolean extras = billing.scopeChanges(visiting.visit(visit)).stream()
                .anyMatch(scopeChange -> scopeChange.type() == ScopeChangeType.EXTRA);
        return extras ? 1 : 4;
    }

    private void settle(Scene scene, Slot slot, VisitId id, Schedules schedules) {
        Visit visit = visiting.visit(id);
        boolean settled = true;
        boolean returnVisit = false;
        for (ScopeChange scopeChange : billing.scopeChanges(visit)) {
            ScopeDecision decision = decision(scene, scopeChange);
            billing.decide(scene, scopeChange, decision, note(decision));
            settled &= decision.isSettled();
            returnVisit |= decision == ScopeDecision.RETURN_VISIT;
        }
        if (returnVisit) {
            scene.agenda().noteAfter(1, 9, () -> schedules.returnVisit(scene, slot, id));
        }
        if (settled) {
            scene.agenda().noteAfter(scene.dice().percent(70) ? 0 : 1, 13, () -> bill(scene, slot, id));
        } else {
            scene.agenda().noteAfter(5, 14, () -> answered(scene, slot, id));
        }
    }

    private static ScopeDecision decision(Scene scene, ScopeChange scopeChange) {
        if (scopeChange.type() == ScopeChangeType.EXTRA) {
            if (scene.isLately()) {
                return ScopeDecision.ASK;
            }
            Dice dice = scene.dice();
            return dice.percent(45)
                    ? ScopeDecision.BILL
                    : dice.percent(45) ? ScopeDecision.NO_CHARGE : ScopeDecision.ASK;
        }
        return scopeChange.reason() == SkipReason.WEATHER ? ScopeDecision.RETURN_VISIT : ScopeDecision.CANCEL;
    }

    private static String note(ScopeDecision decision) {
        return switch (decision) {
            case ASK -> "Asked by email.";
            case NO_CHARGE -> "Regular customer; with our compliments.";
            default -> "";
        };
    }

    /** The customer has said what to do about the extras. */
    private void answered(Scene scene, Slot slot, VisitId id) {
        for (ScopeChange scopeChange : billing.scopeChanges(visiting.visit(id))) {
            if (scopeChange.decision() == ScopeDecision.ASK) {
                boolean pays = scene.dice().percent(70);
                billing.decide(
                        scene,
                        scopeChange,
                        pays ? ScopeDecision.BILL : ScopeDecision.NO_CHARGE,
                        pays ? "Customer agrees." : "Customer did not order it.");
            }
        }
        bill(scene, slot, id);
    }

    private void bill(Scene scene, Slot slot, VisitId id) {
        if (!billing.hasAnythingToBill(id)) {
            billing.closeWithoutBilling(scene, id, "No one at home. Nothing was done.");
            return;
        }
        InvoiceDraft draft = billing.draft(scene, id);
        InvoiceDraft last = scene.dice().percent(6) ? billing.allow(scene, draft, 10, "Regular customer") : draft;
        int wait = scene.dice().percent(20) ? 4 : 0;
        scene.agenda().noteAfter(wait, 15, () -> issue(scene, slot, last, id));
    }

    private void issue(Scene scene, Slot slot, InvoiceDraft draft, VisitId visit) {
        IssuedInvoice invoice = billing.issue(scene, draft);
        InvoiceId id = invoice.id();
        issued++;
        if (issued == BILLED_TWICE) {
            scene.agenda().noteAfter(1, 9, () -> {
                billing.credit(scene, id, "Sent to the wrong address");
                bill(scene, slot, visit);
            });
        } else if (issued == TAKEN_BACK) {
            scene.agenda().noteAfter(3, 9, () -> {
                billing.credit(scene, id, "Streaks on every pane; taken back in full");
                billing.closeWithoutBilling(scene, visit, "Complaint, settled as no-charge work");
            });
        } else {
            payments.expect(scene, invoice);
        }
    }

    private void answer(Scene scene, Slot slot, Sheets.Seen seen, Schedules schedules) {
        Sighting what = seen.what();
        Agenda agenda = scene.agenda();
        followUp.notifyCustomer(scene, seen.id());
        if (what.trade != null) {
            agenda.noteAfter(2, 10, () -> followUp.refer(scene, seen.id(), what.trade));
            if (scene.dice().percent(90)) {
                agenda.noteAfter(
                        scene.dice().between(8, 22),
                        16,
                        () -> followUp.close(scene, seen.id(), "Mended, says the customer."));
            }
        } else if (what.callsForWork()) {
            agenda.noteAfter(1, 10, () -> {
                followUp.noteUpsell(
                        scene,
                        seen.id(),
                        what == Sighting.GUTTER ? "Clear the gutters; quote it." : "Moss treatment; quote it.");
                schedules.offerWork(scene, slot, seen);
            });
        } else {
            agenda.noteAfter(6, 16, () -> followUp.close(scene, seen.id(), "Customer knows; nothing to do for now."));
        }
    }

    /** The finding's work is scheduled: it is closed when that is done. */
    void workScheduled(Scene scene, FindingId finding, LocalDate day) {
        scene.agenda()
                .note(
                        scene.agenda().workdayAfter(day, 1),
                        LocalTime.of(16, 30),
                        () -> followUp.close(scene, finding, "Work done."));
    }

    /** Two sales that are no visits, to those with money to the good where there are any; another has it paid back. */
    void noteFreeInvoices(Scene scene) {
        Agenda agenda = scene.agenda();
        for (int back : new int[] {46, 11}) {
            DemoSite anybody = scene.dice().oneOf(scene.sites());
            agenda.note(agenda.workdayBefore(agenda.today(), back), LocalTime.of(15, 50), () -> {
                DemoSite site = scene.sites().stream()
                        .filter(s -> payments.hasCredit(s.customer()))
                        .findFirst()
                        .orElse(anybody);
                payments.expect(scene, billing.issue(scene, billing.draftFree(scene, site)));
            });
        }
        // One always waits to be looked over, however the dice fall.
        DemoSite waiting = scene.sites().getLast();
        agenda.note(
                agenda.workdayBefore(agenda.today(), 1), LocalTime.of(17, 5), () -> billing.draftFree(scene, waiting));
        agenda.note(agenda.workdayBefore(agenda.today(), 8), LocalTime.of(11, 45), () -> payments.refundOne(scene));
    }
}
