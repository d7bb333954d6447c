package eaveside.invoicing;

import eaveside.invoicing.internal.CreditApplications;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.Invoices;
import eaveside.invoicing.internal.InvoicingQueries;
import eaveside.invoicing.internal.SettlementRow;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.kernel.UserId;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentType;
import eaveside.ledger.Lock;
import eaveside.ledger.Postable;
import eaveside.ledger.Posted;
import eaveside.ledger.Posting;
import eaveside.ledger.ReadLedger;
import eaveside.ledger.ReverseDocument;
import eaveside.ledger.ReverseDocument.Reversal;
import jakarta.inject.Inject;
import jakarta.transaction.Transactional;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Applies a customer's credit to an invoice after the money came in, and takes that back. */
@Shared
public class ApplyCredit {
    private final Posting posting;
    private final ReverseDocument reverseDocument;
    private final ReadLedger readLedger;
    private final Invoices invoices;
    private final InvoicingQueries queries;
    private final CustomerAccounts accounts;
    private final CreditApplications applying;
    private final Books books;

    @Inject
    public ApplyCredit(
            Posting posting,
            ReverseDocument reverseDocument,
            ReadLedger readLedger,
            Invoices invoices,
            InvoicingQueries queries,
            CustomerAccounts accounts,
            CreditApplications applying,
            Books books) {
        this.posting = posting;
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
    public record Apply(
            DocumentId id,
            InvoiceId invoice,
            Money amount,
            @Nullable LocalDate date,
            UserId by) implements Postable {
        public Apply {
            if (!amount.isPositive()) {
                throw new KernelRefusal.NotPositive("amount");
            }
        }
    }

    /**
     * The same again is a retry. Refuses more than the customer's credit on that day, more than is open on the
     * invoice, and a date before it.
     */
    @Transactional
    public Posted apply(Apply apply) {
        List<Lock> locks =
                List.of(accounts.lockOf(() -> invoices.row(apply.invoice()).customer()));
        return posting.post("credit.apply", apply, locks, day -> {
            InvoiceRow invoice = locked(apply.invoice());
            Money open = invoice.open(books.currency());
            if (books.ours(apply.amount(), "amount").compareTo(open) > 0) {
                throw new InvoiceRefusal.OverAllocated("amount", invoice.label(), open.toString());
            }
            return applying.decide(invoice, apply.amount(), "Credit applied to " + invoice.label());
        });
    }

    /** As {@link #undo(Reversal)}; refuses one that was not applied to the invoice. */
    @Transactional
    public Posted undo(InvoiceId invoice, Reversal reversal) {
        if (!applicationOf(reversal.original())
                .invoice()
                .equals(invoices.row(invoice).id())) {
            throw new KernelRefusal.NotFound("applied credit", reversal.original());
        }
        return undo(reversal);
    }

    /** Takes it back, once; refuses one whose invoice has been credited, since that freed the money already. */
    @Transactional
    public Posted undo(Reversal reversal) {
        List<Lock> locks = List.of(accounts.lockOf(
                () -> invoices.row(applicationOf(reversal.original()).invoice()).customer()));
        return posting.post("credit.unapply", reversal, locks, day -> {
            SettlementRow settlement = applicationOf(reversal.original());
            InvoiceRow invoice = locked(settlement.invoice());
            if (invoice.isCredited()) {
                throw new InvoiceRefusal.Credited(invoice.label());
            }
            Money amount = books.money(settlement.amount());
            return reverseDocument
                    .reversed(DocumentType.REVERSAL, reversal)
                    .about(invoice.id())
                    .then(posted -> {
                        accounts.settle(posted, invoice, amount.negated());
                        accounts.move(invoice.customer(), amount);
                    });
        });
    }

    private SettlementRow applicationOf(DocumentId id) {
        boolean known = readLedger.heads(List.of(id)).stream()
                .anyMatch(head -> head.posted().type() == DocumentType.CREDIT_APPLICATION);
        if (!known) {
            throw new KernelRefusal.NotFound("applied credit", id);
        }
        return queries.settlementsBy(id.value()).getFirst();
    }

    private InvoiceRow locked(InvoiceId id) {
        return Objects.requireNonNull(accounts.lockInvoices(List.of(id)).get(id));
    }
}
