package eaveside.invoicing.internal;

import eaveside.catalog.TaxCategory;
import eaveside.customers.Address;
import eaveside.customers.Customer;
import eaveside.invoicing.Adjustment;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceInput;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.InvoiceTotals.TaxSubtotal;
import eaveside.invoicing.IssuedInvoice;
import eaveside.kernel.DocumentId;
import eaveside.kernel.InvoiceId;
import eaveside.kernel.KernelRefusal;
import eaveside.kernel.Money;
import eaveside.kernel.Shared;
import eaveside.ledger.Books;
import eaveside.ledger.DocumentHead;
import eaveside.ledger.Posted;
import eaveside.ledger.ReadLedger;
import jakarta.inject.Inject;
import jakarta.persistence.EntityManager;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.joda.money.CurrencyUnit;
import org.jspecify.annotations.Nullable;

/** Keeps issued invoices: written once, read whole. */
@Shared
public class Invoices {
    private final EntityManager entities;
    private final InvoicingQueries queries;
    private final ReadLedger readLedger;
    private final Books books;

    @Inject
    public Invoices(EntityManager entities, InvoicingQueries queries, ReadLedger readLedger, Books books) {
        this.entities = entities;
        this.queries = queries;
        this.readLedger = readLedger;
        this.books = books;
    }

    /** @param  billedSheet of the visit that it bills; null for one that bills none */
    public InvoiceRow write(
            Posted posted,
            InvoiceDraft draft,
            DraftReckoning reckoning,
            Customer customer,
            @Nullable DocumentId billedSheet) {
        InvoiceRow row = new InvoiceRow(posted, draft, customer, billedSheet);
        entities.persist(row);
        int adjustment = 0;
        List<DraftLine> lines = draft.content().lines();
        for (int i = 0; i < lines.size(); i++) {
            InvoiceInput.Line reckoned = reckoning.input().lines().get(i);
            entities.persist(new InvoiceLineRow(
                    new PartKey(row.id, i + 1),
                    lines.get(i),
                    draft.origins().get(lines.get(i).id()),
                    reckoned.tax(),
                    draft.totals().lineNets().get(i)));
            for (Adjustment ofLine : reckoned.adjustments()) {
                entities.persist(InvoiceAdjustmentRow.ofLine(new PartKey(row.id, ++adjustment), ofLine, i + 1));
            }
        }
        for (int i = 0; i < draft.content().adjustments().size(); i++) {
            entities.persist(InvoiceAdjustmentRow.ofDocument(
                    new PartKey(row.id, ++adjustment),
                    draft.content().adjustments().get(i).adjustment(),
                    draft.content().adjustments().get(i).taxCode(),
                    reckoning.input().adjustments().get(i).tax()));
        }
        int tax = 0;
        for (TaxSubtotal subtotal : draft.totals().breakdown()) {
            entities.persist(new InvoiceTaxRow(
                    new PartKey(row.id, ++tax),
                    subtotal,
                    reckoning.exemptionReasons().getOrDefault(subtotal.rate().category(), "")));
        }
        return row;
    }

    public InvoiceRow row(InvoiceId id) {
        InvoiceRow row = entities.find(InvoiceRow.class, id.value());
        if (row == null) {
            throw new KernelRefusal.NotFound("invoice", id);
        }
        return row;
    }

    public IssuedInvoice load(InvoiceId id) {
        InvoiceRow row = row(id);
        CurrencyUnit currency = books.currency();
        List<InvoiceAdjustmentRow> adjustments = queries.adjustments(row.id);
        List<IssuedInvoice.Line> lines = queries.lines(row.id).stream()
                .map(line -> line.toLine(
                        currency,
                        adjustments.stream()
                                .filter(a -> a.isOfLine(line.key.position()))
                                .map(a -> a.toAdjustment(currency))
                                .toList()))
                .toList();
        List<InvoiceTaxRow> taxes = queries.taxes(row.id);
        Map<TaxCategory, String> reasons = new LinkedHashMap<>();
        taxes.stream()
                .filter(t -> !t.exemptionReason.isEmpty())
                .forEach(t -> reasons.put(t.taxCategory, t.exemptionReason));
        return new IssuedInvoice(
                row.id(),
                row.number,
                row.date,
                row.dueDate,
                row.serviceDate,
                row.customer(),
                row.customerName,
                new Address(row.street, row.city, row.region, row.zipCode, row.country),
                row.visit(),
                row.reference,
                row.note,
                lines,
                adjustments.stream()
                        .flatMap(a -> a.toDocumentAdjustment(currency).stream())
                        .toList(),
                totals(row, lines, taxes, currency),
                reasons,
                row.open(currency),
                creditMemo(row.creditMemo()),
                settlements(row.id()));
    }

    private InvoiceTotals totals(
            InvoiceRow row, List<IssuedInvoice.Line> lines, List<InvoiceTaxRow> taxes, CurrencyUnit currency) {
        Money gross = books.money(row.gross);
        Money prepaid = books.money(row.prepaid);
        Money rounding = books.money(row.rounding);
        return new InvoiceTotals(
                lines.stream().map(IssuedInvoice.Line::net).toList(),
                books.money(row.lineSum),
                books.money(row.allowances),
                books.money(row.charges),
                books.money(row.net),
                taxes.stream().map(t -> t.toSubtotal(currency)).toList(),
                books.money(row.tax),
                gross,
                prepaid,
                rounding,
                gross.minus(prepaid).plus(rounding));
    }

    private IssuedInvoice.@Nullable CreditMemo creditMemo(@Nullable DocumentId id) {
        return id == null
                ? null
                : readLedger.heads(List.of(id)).stream()
                        .map(head -> new IssuedInvoice.CreditMemo(
                                id, head.posted().number(), head.posted().postingDate(), head.summary()))
                        .findFirst()
                        .orElseThrow();
    }

    private List<IssuedInvoice.Settlement> settlements(InvoiceId id) {
        Map<DocumentId, Money> amounts = new HashMap<>();
        queries.settlementsOf(id.value()).forEach(s -> amounts.put(s.document(), books.money(s.amount())));
        return readLedger.heads(amounts.keySet()).stream()
                .map(DocumentHead::posted)
                .map(posted -> new IssuedInvoice.Settlement(
                        posted.id(),
                        posted.type(),
                        posted.number(),
                        posted.postingDate(),
                        amounts.getOrDefault(posted.id(), books.zero())))
                .toList();
    }
}
