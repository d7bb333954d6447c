package eaveside.invoicing.internal;

import eaveside.kernel.DocumentId;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.AccountRole;
import eaveside.ledger.Books;
import eaveside.ledger.Decided;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Entry;
import eaveside.ledger.Postable;
import eaveside.ledger.Posting;
import jakarta.inject.Inject;
import java.time.LocalDate;
import java.util.List;

/** Posts documents that move a customer's money between credit and invoices; account and invoice are locked before. */
@Shared
public class CreditApplications {
    private final Posting posting;
    private final InvoicingQueries queries;
    private final CustomerAccounts accounts;
    private final Books books;

    @Inject
    public CreditApplications(Posting posting, InvoicingQueries queries, CustomerAccounts accounts, Books books) {
        this.posting = posting;
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
        Step step = new Step(DocumentId.next(), invoice.label(), amount, date, by);
        posting.within(step, List.of(), day -> decide(invoice, amount, summary));
    }

    /** Credit against the invoice: above zero settles it, below frees it again. */
    public Decided decide(InvoiceRow invoice, Money amount, String summary) {
        accounts.move(invoice.customer(), amount.negated());
        return Decided.document(
                        DocumentType.CREDIT_APPLICATION,
                        summary,
                        List.of(
                                Entry.debit(AccountRole.CUSTOMER_CREDIT, amount).of(invoice.customer()),
                                Entry.credit(AccountRole.RECEIVABLES, amount)
                                        .of(invoice.customer())
                                        .noted("On " + invoice.label())))
                .about(invoice.id())
                .then(posted -> {
                    accounts.settle(posted, invoice, amount);
                    accounts.requireCreditOn(invoice.customer(), posted.postingDate());
                });
    }

    /** What the program itself decided to apply, as the content of its document. */
    private record Step(DocumentId id, String invoice, Money amount, LocalDate date, UserId by) implements Postable {}
}
