package eaveside.invoicing.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.Money;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.NewDocument;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;

/** Posts documents that move a customer's money between credit and invoices; account and invoice are locked before. */
@Dependent
public class CreditApplications {
    private final PostDocument postDocument;
    private final InvoicingQueries queries;
    private final CustomerAccounts accounts;
    private final Books books;

    @Inject
    public CreditApplications(
            PostDocument postDocument, InvoicingQueries queries, CustomerAccounts accounts, Books books) {
        this.postDocument = postDocument;
        this.queries = queries;
        this.accounts = accounts;
        this.books = books;
    }

    /** What settles the invoice now, beside the credit that it took when it was issued. */
    public Money settledAfterIssue(InvoiceRow invoice) {
        return Money.sum(
                books.currency(),
                queries.settlementsOf(invoice.id).stream()
                        .filter(s -> !s.document().value().equals(invoice.id))
                        .map(s -> books.money(s.amount()))
                        .toList());
    }

    /** Takes the amount off the invoice's settlements and gives it back to the customer as credit. */
    public void free(InvoiceRow invoice, Money amount, LocalDate date, UserId by) {
        if (amount.isPositive()) {
            applyAgain(invoice, amount.negated(), date, by, "Credit freed from " + invoice.label());
        }
    }

    /** The reverse of {@link #free}, before a payment that had been freed is taken back. */
    public void applyAgain(InvoiceRow invoice, Money amount, LocalDate date, UserId by) {
        applyAgain(invoice, amount, date, by, "Credit matched again with " + invoice.label());
    }

    private void applyAgain(InvoiceRow invoice, Money amount, LocalDate date, UserId by, String summary) {
        DocumentId id = DocumentId.next();
        apply(id, invoice, amount, date, summary, by, Fingerprint.of(new Step(id, invoice.label(), amount)));
    }

    /** Credit against the invoice: above zero settles it, below frees it again. */
    public Posted apply(
            DocumentId id,
            InvoiceRow invoice,
            Money amount,
            LocalDate date,
            String summary,
            UserId by,
            Fingerprint fingerprint) {
        accounts.move(invoice.customer(), amount.negated());
        Posted posted = postDocument.post(NewDocument.of(
                id,
                DocumentType.CREDIT_APPLICATION,
                date,
                summary,
                by,
                fingerprint,
                List.of(
                        Entry.debit(AccountRole.CUSTOMER_CREDIT, amount).of(invoice.customer()),
                        Entry.credit(AccountRole.RECEIVABLES, amount)
                                .of(invoice.customer())
                                .noted("On " + invoice.label()))));
        accounts.settle(posted, invoice, amount);
        accounts.requireCreditOn(invoice.customer(), posted.postingDate());
        return posted;
    }

    /** What the program itself decided to match, as the content of its document. */
    private record Step(DocumentId id, String invoice, Money amount) {}
}
