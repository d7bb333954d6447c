package eaveside.invoicing;

import eaveside.invoicing.internal.CreditApplications;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.InvoicingQueries;
import eaveside.invoicing.internal.PaymentRow;
import eaveside.invoicing.internal.SettlementRow;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
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
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Objects;

/** Takes a wrongly recorded, or bounced, payment back in full, once; what it paid is open again. */
@Shared
public class ReversePayment {
    private final EntityManager entities;
    private final Posting posting;
    private final ReverseDocument reverseDocument;
    private final InvoicingQueries queries;
    private final CustomerAccounts accounts;
    private final CreditApplications applying;
    private final Books books;

    @Inject
    public ReversePayment(
            EntityManager entities,
            Posting posting,
            ReverseDocument reverseDocument,
            InvoicingQueries queries,
            CustomerAccounts accounts,
            CreditApplications applying,
            Books books) {
        this.entities = entities;
        this.posting = posting;
        this.reverseDocument = reverseDocument;
        this.queries = queries;
        this.accounts = accounts;
        this.applying = applying;
        this.books = books;
    }

    /**
     * The reversal names the payment by its document's id, which is the payment's own. The same again is a retry.
     * Refuses where the credit that the payment left has been used meanwhile.
     */
    @Transactional
    public Posted reverse(Reversal reversal) {
        List<Lock> locks = List.of(accounts.lockOf(() -> payment(reversal).customer()));
        return posting.post("payment.reverse", reversal, locks, day -> {
            PaymentRow payment = payment(reversal);
            List<SettlementRow> settled =
                    queries.settlementsBy(reversal.original().value());
            Map<InvoiceId, InvoiceRow> invoices = accounts.lockInvoices(
                    settled.stream().map(SettlementRow::invoice).toList());
            requireCredit(payment, settled, invoices);
            for (SettlementRow settlement : settled) {
                InvoiceRow invoice = Objects.requireNonNull(invoices.get(settlement.invoice()));
                if (invoice.isCredited()) {
                    applying.applyAgain(invoice, books.money(settlement.amount()), day.date(), reversal.by());
                }
            }
            return reverseDocument
                    .reversed(DocumentType.REVERSAL, reversal)
                    .then(posted -> takeBack(posted, payment, settled, invoices));
        });
    }

    private void takeBack(
            Posted posted, PaymentRow payment, List<SettlementRow> settled, Map<InvoiceId, InvoiceRow> invoices) {
        accounts.move(payment.customer(), unapplied(payment, settled).negated());
        accounts.requireCreditOn(payment.customer(), posted.postingDate());
        for (SettlementRow settlement : settled) {
            InvoiceRow invoice = Objects.requireNonNull(invoices.get(settlement.invoice()));
            accounts.settle(posted, invoice, books.money(settlement.amount()).negated());
        }
    }

    private PaymentRow payment(Reversal reversal) {
        PaymentRow payment = entities.find(PaymentRow.class, reversal.original().value());
        if (payment == null) {
            throw new KernelRefusal.NotFound("payment", reversal.original());
        }
        return payment;
    }

    private Money unapplied(PaymentRow payment, List<SettlementRow> settled) {
        return settled.stream()
                .map(s -> books.money(s.amount()))
                .reduce(payment.amount(books.currency()), Money::minus);
    }

    /** The unmatched rest, and what credit memos have freed since, must still be there to be taken back. */
    private void requireCredit(PaymentRow payment, List<SettlementRow> settled, Map<InvoiceId, InvoiceRow> invoices) {
        Money needed = unapplied(payment, settled);
        for (SettlementRow settlement : settled) {
            if (Objects.requireNonNull(invoices.get(settlement.invoice())).isCredited()) {
                needed = needed.plus(books.money(settlement.amount()));
            }
        }
        Money credit = accounts.credit(payment.customer());
        if (needed.compareTo(credit) > 0) {
            throw new InvoiceRefusal.CreditUsed(needed.toString(), credit.toString());
        }
    }
}
