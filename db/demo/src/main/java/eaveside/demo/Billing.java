package eaveside.demo;

import eaveside.invoicing.Adjustment;
import eaveside.invoicing.BillVisit;
import eaveside.invoicing.CreditInvoice;
import eaveside.invoicing.CreditOnHand;
import eaveside.invoicing.Draft;
import eaveside.invoicing.DraftInvoice;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.IssueInvoice;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ItemPrice;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.InvoiceLineId;
import eaveside.kernel.Quantity;
import eaveside.kernel.Unit;
import eaveside.kernel.UnitPrice;
import eaveside.kernel.VisitId;
import eaveside.ledger.ReverseDocument;
import eaveside.visits.BillableVisit;
import eaveside.visits.CloseWithoutBilling;
import eaveside.visits.DecideScopeChange;
import eaveside.visits.ReadSheets;
import eaveside.visits.ScopeChange;
import eaveside.visits.ScopeChangeDecision;
import eaveside.visits.ScopeDecision;
import eaveside.visits.Visit;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;

/** The office's part after a visit: differences decided, invoices drafted, issued and credited. */
@Dependent
class Billing {
    private final ReadSheets readSheets;
    private final DecideScopeChange decideScopeChange;
    private final BillableVisit billableVisit;
    private final CloseWithoutBilling closeWithoutBilling;
    private final BillVisit billVisit;
    private final DraftInvoice draftInvoice;
    private final IssueInvoice issueInvoice;
    private final CreditInvoice creditInvoice;

    @Inject
    Billing(
            ReadSheets readSheets,
            DecideScopeChange decideScopeChange,
            BillableVisit billableVisit,
            CloseWithoutBilling closeWithoutBilling,
            BillVisit billVisit,
            DraftInvoice draftInvoice,
            IssueInvoice issueInvoice,
            CreditInvoice creditInvoice) {
        this.readSheets = readSheets;
        this.decideScopeChange = decideScopeChange;
        this.billableVisit = billableVisit;
        this.closeWithoutBilling = closeWithoutBilling;
        this.billVisit = billVisit;
        this.draftInvoice = draftInvoice;
        this.issueInvoice = issueInvoice;
        this.creditInvoice = creditInvoice;
    }

    List<ScopeChange> scopeChanges(Visit visit) {
        return readSheets.sheet(Objects.requireNonNull(visit.sheet())).scopeChanges();
    }

    void decide(Scene scene, ScopeChange scopeChange, ScopeDecision decision, String note) {
        decideScopeChange.decide(new ScopeChangeDecision(
                scopeChange.visit(),
                scopeChange.id(),
                scopeChange.version(),
                decision,
                note,
                scene.staff().biller()));
    }

    boolean hasAnythingToBill(VisitId visit) {
        return !billableVisit.of(visit).lines().isEmpty();
    }

    void closeWithoutBilling(Scene scene, VisitId visit, String reason) {
        closeWithoutBilling.close(new CloseWithoutBilling.Closing(
                DocumentId.next(), visit, scene.day(), reason, scene.staff().biller()));
    }

    InvoiceDraft draft(Scene scene, VisitId visit) {
        return billVisit.draft(
                new BillVisit.Bill(InvoiceId.next(), visit, scene.staff().biller()));
    }

    /** A freely written one, not for a visit. */
    InvoiceDraft draftFree(Scene scene, DemoSite site) {
        DraftLine screens = new DraftLine(
                InvoiceLineId.next(),
                scene.range().id(Line.WINDOWS),
                "Fly screens, cut and fitted",
                Quantity.of(4, Unit.PIECE),
                ItemPrice.of(UnitPrice.perOne(Dollars.USD, new BigDecimal("46.50"), Unit.PIECE)),
                List.of(),
                Selling.TAXED);
        return draftInvoice.save(
                new Draft(
                        InvoiceId.next(),
                        0,
                        site.customer(),
                        scene.day(),
                        "",
                        "",
                        List.of(screens),
                        List.of(),
                        null,
                        null),
                scene.staff().biller());
    }

    /** Takes a little off for a customer of old. */
    InvoiceDraft allow(Scene scene, InvoiceDraft draft, long dollars, String reason) {
        Draft content = draft.content();
        return draftInvoice.save(
                new Draft(
                        content.id(),
                        content.version(),
                        content.customer(),
                        content.serviceDate(),
                        content.reference(),
                        "Thank you for having us again.",
                        content.lines(),
                        List.of(new Draft.OnDocument(
                                Adjustment.allowance(Dollars.whole(dollars), reason),
                                content.lines().getFirst().taxCode())),
                        content.prepaid(),
                        content.rounding()),
                scene.staff().biller());
    }

    IssuedInvoice issue(Scene scene, InvoiceDraft draft) {
        return issueInvoice.issue(new IssueInvoice.Issue(
                draft.id(),
                draft.version(),
                scene.day(),
                CreditOnHand.KEEP,
                scene.staff().biller()));
    }

    void credit(Scene scene, InvoiceId id, String reason) {
        creditInvoice.credit(new ReverseDocument.Reversal(
                DocumentId.next(),
                new DocumentId(id.value()),
                scene.day(),
                reason,
                scene.staff().biller()));
    }
}
