package eaveside.visits;

import eaveside.kernel.LocationId;
import eaveside.kernel.Shared;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.visits.internal.Crews;
import eaveside.visits.internal.LineShares;
import eaveside.visits.internal.ScopeChanges;
import eaveside.visits.internal.SheetConsumption;
import eaveside.visits.internal.SheetCost;
import eaveside.visits.internal.SheetRecord;
import eaveside.visits.internal.SheetWork;
import eaveside.visits.internal.SiteFacts;
import eaveside.visits.internal.SoapCheck;
import eaveside.visits.internal.ValueToBill;
import eaveside.visits.internal.VisitLineRow;
import eaveside.visits.internal.VisitRow;
import eaveside.visits.internal.Visits;
import eaveside.visits.internal.WorkLine;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;

/**
 * Signs a visit off by its sheet. Everything that follows from it commits together or not at all: the declared count, the
 * stock used at its lots' cost, work in progress by service line, surfaces corrected, findings opened, scope changes
 * opened, the visit done.
 */
@Shared
public class SignOffVisit {
    private final Visits visits;
    private final Crews crews;
    private final SiteFacts siteFacts;
    private final SheetWork sheetWork;
    private final SheetConsumption consumption;
    private final SoapCheck soapCheck;
    private final SheetRecord sheetRecord;
    private final ValueToBill valueToBill;
    private final Posting posting;

    @Inject
    public SignOffVisit(
            Visits visits,
            Crews crews,
            SiteFacts siteFacts,
            SheetWork sheetWork,
            SheetConsumption consumption,
            SoapCheck soapCheck,
            SheetRecord sheetRecord,
            ValueToBill valueToBill,
            Posting posting) {
        this.visits = visits;
        this.crews = crews;
        this.siteFacts = siteFacts;
        this.sheetWork = sheetWork;
        this.consumption = consumption;
        this.soapCheck = soapCheck;
        this.sheetRecord = sheetRecord;
        this.valueToBill = valueToBill;
        this.posting = posting;
    }

    /** The posted sheet, and what the signer should know about the soap. */
    public record SignedOff(Posted posted, List<SoapWarning> warnings) {}

    /**
     * The same sheet again is a retry and changes nothing. Refuses a technician outside the crew ({@link
     * VisitRefusal.NotYours}), a visit that is not planned any more, a day of the work to come or far from the plan ({@link
     * VisitRefusal.DayFarFromPlan}), planned work that is not accounted for, and whatever the inventory, the findings or the
     * customers' book refuse.
     */
    @Transactional
    public SignedOff signOff(JobSheet sheet) {
        Posted posted =
                posting.post("visit.sign-off", sheet, List.of(visits.lockOf(sheet.visit())), day -> decide(sheet));
        return new SignedOff(posted, visits.sheet(sheet.id()).warnings());
    }

    private Decided decide(JobSheet sheet) {
        VisitRow visit = visits.locked(sheet.visit());
        crews.requireOwn(sheet.by(), visit);
        visit.requireStatus(VisitStatus.SCHEDULED);
        visit.requireNear(sheet.completedOn());
        LocationId location = crews.locationOf(sheet, visit);
        siteFacts.correctSurfaces(visit, sheet);

        List<VisitLineRow> planned = visits.plannedLines(visit);
        ScopeChanges scope = ScopeChanges.between(Visits.plan(planned), sheet.lines(), sheet.extras());
        List<VisitLineRow> extras = sheetWork.extras(visit, sheet, planned, scope);
        List<WorkLine> work = sheetWork.lines(planned, scope, extras);
        LineShares shares = new LineShares(work);
        List<SheetConsumption.Use> uses = consumption.uses(sheet, shares);
        List<SoapWarning> warnings = soapCheck.ofSheet(uses, work);

        SheetConsumption.Taken taken = consumption.take(sheet, location, uses);
        SheetCost cost = new SheetCost();
        taken.addTo(cost, shares);
        sheetWork.addTo(cost, sheet.completedOn(), sheet.effort(), work);
        return Decided.document(DocumentType.JOB_SHEET, "Job sheet", cost.entries(visit.id(), visit.customer()))
                .notPostedBefore(taken.notBefore())
                .about(visit.id())
                .then(posted -> {
                    consumption.record(posted, taken);
                    siteFacts.openFindings(visit, sheet);
                    sheetRecord.save(sheet, location, scope, extras, cost, taken.overruns(), warnings);
                    visit.done(sheet.id(), sheet.completedOn(), valueToBill.of(visit, sheet.id(), sheet.completedOn()));
                });
    }
}
