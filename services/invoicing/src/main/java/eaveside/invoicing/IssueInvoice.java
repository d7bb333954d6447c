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
import eaveside.kernel.Default;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.kernel.VisitId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReadBalances;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Turns a draft into an invoice: number, date, entries, and nothing about it changes any more. */
@Shared
public class IssueInvoice {
    private final EntityManager entities;
    private final Posting posting;
    private final ReadBalances readBalances;
    private final ReadCustomer readCustomer;
    private final BilledVisits billedVisits;
    private final Drafts drafts;
    private final Invoices invoices;
    private final CustomerAccounts accounts;

    @Inject
    public IssueInvoice(
            EntityManager entities,
            Posting posting,
            ReadBalances readBalances,
            ReadCustomer readCustomer,
            BilledVisits billedVisits,
            Drafts drafts,
            Invoices invoices,
            CustomerAccounts accounts) {
        this.entities = entities;
        this.posting = posting;
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
    public record Issue(
            InvoiceId id,
            int version,
            @Nullable LocalDate date,
            @Default("ASK") CreditOnHand credit,
            UserId by) implements Postable {}

    /**
     * Issues the draft; the same again is a retry. Refuses a draft that somebody changed meanwhile, a total below zero,
     * more prepaid than the customer's credit or the invoice, a visit that has changed since the draft was made, and
     * unapplied credit that nobody has decided on.
     */
    @Transactional
    public IssuedInvoice issue(Issue issue) {
        List<Lock> locks = List.of(
                Lock.of(
                        Lock.Rank.RECORD,
                        () -> billedVisits.lock(drafts.locked(issue.id()).visit())),
                accounts.lockOf(() -> drafts.locked(issue.id()).customer()));
        posting.post("invoice.issue", issue, locks, day -> decide(issue, day.date()));
        return invoices.load(issue.id());
    }

    private Decided decide(Issue issue, LocalDate date) {
        DraftRow row = drafts.locked(issue.id());
        InvoiceDraft written = drafts.load(row);
        if (written.version() != issue.version()) {
            throw new InvoiceRefusal.DraftChanged(written.version());
        }
        requirePayable(written.totals());
        Posted sheet = billedVisits.bill(row);
        InvoiceDraft draft = withCredit(written, issue.credit(), date);
        accounts.move(draft.customer(), draft.totals().prepaid().negated());
        Customer customer = readCustomer.customer(draft.customer());
        DraftReckoning reckoning = drafts.reckoning(draft.content(), draft.origins());
        Decided decided = Decided.document(
                        DocumentType.INVOICE,
                        "Invoice to " + customer.name(),
                        InvoiceEntries.of(draft, reckoning, workInProgress(draft)))
                .onItsDate()
                .then(posted -> {
                    InvoiceRow invoice =
                            invoices.write(posted, draft, reckoning, customer, sheet == null ? null : sheet.id());
                    Money prepaid = draft.totals().prepaid();
                    if (prepaid.isPositive()) {
                        entities.flush();
                        accounts.settleAtIssue(posted.id(), invoice, prepaid);
                        accounts.requireCreditOn(draft.customer(), posted.postingDate());
                    }
                    drafts.delete(row);
                    entities.flush();
                });
        return sheet == null ? decided : decided.restingOn("job sheet " + sheet.number(), sheet.postingDate());
    }

    /** The draft with the customer's unapplied credit taken as well, where that was decided. */
    private InvoiceDraft withCredit(InvoiceDraft draft, CreditOnHand credit, LocalDate date) {
        Money taken = draft.totals().prepaid();
        Money left = accounts.creditOn(draft.customer(), date).minus(taken);
        Money due = draft.totals().due();
        if (credit == CreditOnHand.KEEP || !left.isPositive() || !due.isPositive()) {
            return draft;
        }
        if (credit == CreditOnHand.ASK) {
            throw new InvoiceRefusal.CreditNotDecided(left.toString());
        }
        Draft content = draft.content().withPrepaid(taken.plus(left.compareTo(due) < 0 ? left : due));
        return new InvoiceDraft(
                content,
                draft.visit(),
                draft.origins(),
                drafts.reckoning(content, draft.origins()).totals());
    }

    private static void requirePayable(InvoiceTotals totals) {
        Money total = totals.gross().plus(totals.rounding());
        if (totals.gross().isNegative() || total.isNegative()) {
            throw new InvoiceRefusal.NegativeTotal(total.toString());
        }
        if (totals.due().isNegative()) {
            throw new InvoiceRefusal.OverAllocated(
                    "prepaid", "The invoice", totals.gross().toString());
        }
    }

    private List<ReadBalances.VisitBalance> workInProgress(InvoiceDraft draft) {
        VisitId visit = draft.visit();
        return visit == null ? List.of() : readBalances.ofVisit(AccountRole.WORK_IN_PROGRESS, visit);
    }
}
