package eaveside.invoicing;

import eaveside.invoicing.internal.BilledVisits;
import eaveside.invoicing.internal.CreditApplications;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.Invoices;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/**
 * Takes an issued invoice back in full, once, by a credit memo. What had been paid on it becomes the customer's credit
 * again; a visit that it billed can be billed anew.
 */
@Dependent
public class CreditInvoice {
    private final PostDocument postDocument;
    private final ReverseDocument reverseDocument;
    private final BilledVisits billedVisits;
    private final Invoices invoices;
    private final CustomerAccounts accounts;
    private final CreditApplications applying;
    private final Books books;

    @Inject
    public CreditInvoice(
            PostDocument postDocument,
            ReverseDocument reverseDocument,
            BilledVisits billedVisits,
            Invoices invoices,
            CustomerAccounts accounts,
            CreditApplications applying,
            Books books) {
        this.postDocument = postDocument;
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
        Optional<Posted> before = postDocument.alreadyPosted(reversal.id(), Fingerprint.of(reversal));
        if (before.isPresent()) {
            return before.get();
        }
        InvoiceId id = new InvoiceId(reversal.original().value());
        InvoiceRow found = invoices.row(id);
        requireStanding(found, reversal);
        billedVisits.free(found.visit(), id);
        postDocument.openDay(reversal.date());
        accounts.lock(found.customer());
        InvoiceRow invoice = Objects.requireNonNull(
                accounts.lockInvoices(found.customer(), List.of(id)).get(id));
        requireStanding(invoice, reversal);
        applying.free(invoice, applying.settledAfterIssue(invoice), reversal.date(), reversal.by());
        Posted posted = reverseDocument.reverse(DocumentType.CREDIT_MEMO, reversal);
        Money prepaid = invoice.prepaid(books.currency());
        if (prepaid.isPositive()) {
            accounts.move(invoice.customer(), prepaid);
            accounts.settle(posted, invoice, prepaid.negated());
        }
        invoice.creditedBy(posted.id());
        return posted;
    }

    private static void requireStanding(InvoiceRow invoice, Reversal reversal) {
        DocumentId note = invoice.creditMemo();
        if (note != null) {
            throw new InvoiceRefusal.AlreadyCredited(invoice.label(), "the credit memo " + note);
        }
        if (reversal.date().isBefore(invoice.date())) {
            throw new InvoiceRefusal.BeforeInvoice(reversal.date(), invoice.date());
        }
    }
}
