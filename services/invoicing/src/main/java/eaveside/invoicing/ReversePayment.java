package eaveside.invoicing;

import eaveside.invoicing.internal.CreditApplications;
import eaveside.invoicing.internal.CustomerAccounts;
import eaveside.invoicing.internal.InvoiceRow;
import eaveside.invoicing.internal.InvoicingQueries;
import eaveside.invoicing.internal.PaymentRow;
import eaveside.invoicing.internal.SettlementRow;
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
import jakarta.persistence.EntityManager;
import jakarta.transaction.Transactional;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;

/** Takes a wrongly recorded, or bounced, payment back in full, once; what it paid is open again. */
@Dependent
public class ReversePayment {
    private final EntityManager entities;
    private final PostDocument postDocument;
    private final ReverseDocument reverseDocument;
    private final InvoicingQueries queries;
    private final CustomerAccounts accounts;
    private final CreditApplications applying;
    private final Books books;

    @Inject
    public ReversePayment(
            EntityManager entities,
            PostDocument postDocument,
            ReverseDocument reverseDocument,
            InvoicingQueries queries,
            CustomerAccounts accounts,
            CreditApplications applying,
            Books books) {
        this.entities = entities;
        this.postDocument = postDocument;
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
        Optional<Posted> before = postDocument.alreadyPosted(reversal.id(), Fingerprint.of(reversal));
        if (before.isPresent()) {
            return before.get();
        }
        postDocument.openDay(reversal.date());
        PaymentRow payment = entities.find(PaymentRow.class, reversal.original().value());
        if (payment == null) {
            throw new InvoiceRefusal.NoSuchPayment(reversal.original().toString());
        }
        accounts.lock(payment.customer());
        List<SettlementRow> settled = queries.settlementsBy(reversal.original().value());
        Map<InvoiceId, InvoiceRow> invoices = accounts.lockInvoices(
                payment.customer(), settled.stream().map(SettlementRow::invoice).toList());
        requireCredit(payment, settled, invoices);
        for (SettlementRow settlement : settled) {
            InvoiceRow invoice = Objects.requireNonNull(invoices.get(settlement.invoice()));
            if (invoice.isCredited()) {
                applying.applyAgain(invoice, books.money(settlement.amount()), reversal.date(), reversal.by());
            }
        }
        Posted posted = reverseDocument.reverse(DocumentType.REVERSAL, reversal);
        accounts.move(payment.customer(), unapplied(payment, settled).negated());
        accounts.requireCreditOn(payment.customer(), posted.postingDate());
        for (SettlementRow settlement : settled) {
            InvoiceRow invoice = Objects.requireNonNull(invoices.get(settlement.invoice()));
            accounts.settle(posted, invoice, books.money(settlement.amount()).negated());
        }
        return posted;
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
