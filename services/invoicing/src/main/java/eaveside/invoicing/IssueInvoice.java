package eaveside.invoicing;

import eaveside.customers.Customer;
import eaveside.customers.ReadCustomer;
import eaveside.invoicing.internal.BilledVisits;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.DraftReckoning;
import eaveside.invoicing.internal.DraftRow;
import eaveside.invoicing.internal.Drafts;
import eaveside.invoicing.internal.InvoiceEntries;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.Invoices;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.DocumentType;
import eaveside.ledger.NewDocument;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadBalances;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.Optional;

/** Turns a draft into an invoice: number, date, entries, and nothing about it changes any more. */
@Dependent
public class IssueInvoice {
    private final EntityManager entities;
    private final PostDocument postDocument;
    private final ReadBalances readBalances;
    private final ReadCustomer readCustomer;
    private final BilledVisits billedVisits;
    private final Drafts drafts;
    private final Invoices invoices;
    private final CustomerAccounts accounts;

    @Inject
    public IssueInvoice(
            EntityManager entities,
            PostDocument postDocument,
            ReadBalances readBalances,
            ReadCustomer readCustomer,
            BilledVisits billedVisits,
            Drafts drafts,
            Invoices invoices,
            CustomerAccounts accounts) {
        this.entities = entities;
        this.postDocument = postDocument;
        this.readBalances = readBalances;
        this.readCustomer = readCustomer;
        this.billedVisits = billedVisits;
        this.drafts = drafts;
        this.invoices = invoices;
        this.accounts = accounts;
    }

    /**
     * @param  version of the draft that was read
     * @param  date    of the invoice: not in a closed period, nor before the last invoice, nor before the visit's sheet
     * @param  credit  whether the customer's unapplied credit pays of it at once
     */
    public record Issue(InvoiceId id, int version, LocalDate date, CreditOnHand credit, UserId by) {}

    /**
     * Issues the draft; the same again is a retry. Refuses a draft that somebody changed meanwhile, a total below zero,
     * more prepaid than the customer's credit or the invoice, a visit that has changed since the draft was made, and
     * unapplied credit that nobody has decided on.
     */
    @Transactional
    public IssuedInvoice issue(Issue issue) {
        Fingerprint fingerprint = Fingerprint.of(issue);
        DocumentId document = new DocumentId(issue.id().value());
        Optional<Posted> before = postDocument.alreadyPosted(document, fingerprint);
        if (before.isPresent()) {
            return invoices.load(issue.id());
        }
        Optional<DraftRow> locked = drafts.lockedIfThere(issue.id());
        if (locked.isEmpty()
                && postDocument.alreadyPosted(document, fingerprint).isPresent()) {
            return invoices.load(issue.id()); // the same click, twice at once
        }
        DraftRow row = locked.orElseGet(() -> drafts.locked(issue.id()));
        InvoiceDraft written = drafts.load(row);
        if (written.version() != issue.version()) {
            throw new InvoiceRefusal.DraftChanged(written.content(), written);
        }
        requirePayable(written.totals());
        DocumentId sheet = billedVisits.bill(row, issue.date());
        postDocument.openDay(issue.date());
        accounts.lock(written.customer());
        InvoiceDraft draft = withCredit(written, issue);
        accounts.move(draft.customer(), draft.totals().prepaid().negated());
        Customer customer = readCustomer.customer(draft.customer());
        DraftReckoning reckoning = drafts.reckoning(draft.content(), draft.origins());
        Posted posted = postDocument.postOn(NewDocument.of(
                document,
                DocumentType.INVOICE,
                issue.date(),
                "Invoice to " + customer.name(),
                issue.by(),
                fingerprint,
                InvoiceEntries.of(draft, reckoning, workInProgress(draft))));
        InvoiceRow invoice = invoices.write(posted, draft, reckoning, customer, sheet);
        Money prepaid = draft.totals().prepaid();
        if (prepaid.isPositive()) {
            entities.flush();
            accounts.settleAtIssue(document, invoice, prepaid);
            accounts.requireCreditOn(draft.customer(), posted.postingDate());
        }
        drafts.delete(row);
        entities.flush();
        return invoices.load(issue.id());
    }

    /** The draft with the customer's unapplied credit taken as well, where that was decided. */
    private InvoiceDraft withCredit(InvoiceDraft draft, Issue issue) {
        Money taken = draft.totals().prepaid();
        Money left = accounts.creditOn(draft.customer(), issue.date()).minus(taken);
        Money due = draft.totals().due();
        if (issue.credit() == CreditOnHand.KEEP || !left.isPositive() || !due.isPositive()) {
            return draft;
        }
        if (issue.credit() == CreditOnHand.ASK) {
            throw new InvoiceRefusal.CreditNotDecided(left.toString());
        }
        DraftContent content = draft.content().withPrepaid(taken.plus(left.compareTo(due) < 0 ? left : due));
        return new InvoiceDraft(
                draft.id(),
                draft.version(),
                draft.customer(),
                draft.visit(),
                content,
                draft.origins(),
                drafts.reckoning(content, draft.origins()).totals());
    }

    private static void requirePayable(InvoiceTotals totals) {
        Money total = totals.gross().plus(totals.rounding());
        if (totals.gross().isNegative() || total.isNegative()) {
            throw new InvoiceRefusal.NegativeTotal(total.toString());
        }
        if (totals.due().isNegative()) {
            throw new InvoiceRefusal.OverAllocated("The invoice", totals.gross().toString());
        }
    }

    private List<ReadBalances.VisitBalance> workInProgress(InvoiceDraft draft) {
        VisitId visit = draft.visit();
        return visit == null ? List.of() : readBalances.ofVisit(AccountRole.WORK_IN_PROGRESS, visit);
    }
}
