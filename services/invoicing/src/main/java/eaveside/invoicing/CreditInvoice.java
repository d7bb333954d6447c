package eaveside.invoicing;

import eaveside.invoicing.internal.BilledVisits;
import eaveside.invoicing.internal.CreditApplications;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.Invoices;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Objects;

/**
 * Takes an issued invoice back in full, once, by a credit memo. What had been paid on it becomes the customer's credit
 * again; a visit that it billed can be billed anew.
 */
@Shared
public class CreditInvoice {
    private final Posting posting;
    private final ReverseDocument reverseDocument;
    private final BilledVisits billedVisits;
    private final Invoices invoices;
    private final CustomerAccounts accounts;
    private final CreditApplications applying;
    private final Books books;

    @Inject
    public CreditInvoice(
            Posting posting,
            ReverseDocument reverseDocument,
            BilledVisits billedVisits,
            Invoices invoices,
            CustomerAccounts accounts,
            CreditApplications applying,
            Books books) {
        this.posting = posting;
        this.reverseDocument = reverseDocument;
        this.billedVisits = billedVisits;
        this.invoices = invoices;
        this.accounts = accounts;
        this.applying = applying;
        this.books = books;
    }

    /**
     * The reversal names the invoice by its document's id, which is the invoice's own. The same again is a retry.
     * Refuses an invoice that has been credited by another note, and a date before the invoice's.
     */
    @Transactional
    public Posted credit(Reversal reversal) {
        InvoiceId id = new InvoiceId(reversal.original().value());
        List<Lock> locks = List.of(
                Lock.of(
                        Lock.Rank.RECORD,
                        () -> billedVisits.lock(invoices.row(id).visit())),
                accounts.lockOf(() -> invoices.row(id).customer()));
        return posting.post("invoice.credit", reversal, locks, day -> {
            InvoiceRow invoice =
                    Objects.requireNonNull(accounts.lockInvoices(List.of(id)).get(id));
            requireStanding(invoice);
            billedVisits.free(invoice.visit(), id);
            applying.free(invoice, applying.settledAfterIssue(invoice), day.date(), reversal.by());
            return reverseDocument.reversed(DocumentType.CREDIT_MEMO, reversal).then(posted -> {
                Money prepaid = invoice.prepaid(books.currency());
                if (prepaid.isPositive()) {
                    accounts.move(invoice.customer(), prepaid);
                    accounts.settle(posted, invoice, prepaid.negated());
                }
                invoice.creditedBy(posted.id());
            });
        });
    }

    private static void requireStanding(InvoiceRow invoice) {
        DocumentId memo = invoice.creditMemo();
        if (memo != null) {
            throw new InvoiceRefusal.AlreadyCredited(invoice.label(), "the credit memo " + memo);
        }
    }
}
