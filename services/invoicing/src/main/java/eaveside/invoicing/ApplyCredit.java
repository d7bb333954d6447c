package eaveside.invoicing;

import eaveside.invoicing.internal.CreditApplications;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.Invoices;
import eaveside.invoicing.internal.InvoicingQueries;
import eaveside.invoicing.internal.SettlementRow;
import eaveside.kernel.DocumentId;
import eaveside.kernel.Fingerprint;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.Money;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.PostDocument;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import jakarta.enterprise.context.Dependent;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import java.util.Optional;

/** Matches a customer's credit with an invoice after the money came in, and takes such a match back. */
@Dependent
public class ApplyCredit {
    private final PostDocument postDocument;
    private final ReverseDocument reverseDocument;
    private final ReadLedger readLedger;
    private final Invoices invoices;
    private final InvoicingQueries queries;
    private final CustomerAccounts accounts;
    private final CreditApplications applying;
    private final Books books;

    @Inject
    public ApplyCredit(
            PostDocument postDocument,
            ReverseDocument reverseDocument,
            ReadLedger readLedger,
            Invoices invoices,
            InvoicingQueries queries,
            CustomerAccounts accounts,
            CreditApplications applying,
            Books books) {
        this.postDocument = postDocument;
        this.reverseDocument = reverseDocument;
        this.readLedger = readLedger;
        this.invoices = invoices;
        this.queries = queries;
        this.accounts = accounts;
        this.applying = applying;
        this.books = books;
    }

    /**
     * How much credit an invoice takes.
     *
     * @param  id of the document, made by the client
     */
    public record Apply(DocumentId id, InvoiceId invoice, Money amount, LocalDate date, UserId by) {
        public Apply {
            if (!amount.isPositive()) {
                throw new InvoiceRefusal.NotPositive("amount");
            }
        }
    }

    /**
     * The same again is a retry. Refuses more than the customer's credit on that day, more than is open on the
     * invoice, and a date before it.
     */
    @Transactional
    public Posted apply(Apply apply) {
        Fingerprint fingerprint = Fingerprint.of(apply);
        Optional<Posted> before = postDocument.alreadyPosted(apply.id(), fingerprint);
        if (before.isPresent()) {
            return before.get();
        }
        postDocument.openDay(apply.date());
        InvoiceRow invoice = locked(apply.invoice());
        Money open = invoice.open(books.currency());
        if (apply.amount().compareTo(open) > 0) {
            throw new InvoiceRefusal.OverAllocated(invoice.label(), open.toString());
        }
        return applying.apply(
                apply.id(),
                invoice,
                apply.amount(),
                apply.date(),
                "Credit matched with " + invoice.label(),
                apply.by(),
                fingerprint);
    }

    /** Takes a match back, once; refuses one whose invoice has been credited, since that freed the money already. */
    @Transactional
    public Posted undo(Reversal reversal) {
        Optional<Posted> before = postDocument.alreadyPosted(reversal.id(), Fingerprint.of(reversal));
        if (before.isPresent()) {
            return before.get();
        }
        postDocument.openDay(reversal.date());
        SettlementRow settlement = applicationOf(reversal.original());
        InvoiceRow invoice = locked(settlement.invoice());
        if (invoice.isCredited()) {
            throw new InvoiceRefusal.Credited(invoice.label());
        }
        Money amount = books.money(settlement.amount());
        Posted posted = reverseDocument.reverse(DocumentType.REVERSAL, reversal);
        accounts.settle(posted, invoice, amount.negated());
        accounts.move(invoice.customer(), amount);
        return posted;
    }

    private SettlementRow applicationOf(DocumentId id) {
        boolean known = readLedger.heads(List.of(id)).stream()
                .anyMatch(head -> head.posted().type() == DocumentType.CREDIT_APPLICATION);
        if (!known) {
            throw new InvoiceRefusal.NoSuchApplication(id.toString());
        }
        return queries.settlementsBy(id.value()).getFirst();
    }

    private InvoiceRow locked(InvoiceId id) {
        InvoiceRow found = invoices.row(id);
        accounts.lock(found.customer());
        return Objects.requireNonNull(
                accounts.lockInvoices(found.customer(), List.of(id)).get(id));
    }
}
