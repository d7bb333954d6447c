package eaveside.web.invoices;

import eaveside.invoicing.Adjustment;
import eaveside.invoicing.Aging.Bucket;
import eaveside.invoicing.DraftContent;
import eaveside.invoicing.DraftLine;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.invoicing.TaxRate;
import eaveside.kernel.Money;
import eaveside.kernel.Slice;
import eaveside.ledger.Posted;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** What scripts are answered about invoices. Amounts are texts with the currency's decimals. */
public final class InvoiceAnswers {
    private InvoiceAnswers() {}

    private static String text(Money money) {
        return money.amount().toPlainString();
    }

    /** The tax of one category and rate. */
    public record Tax(String taxCategory, String rate, String taxable, String tax) {}

    /** The sums of an invoice after EN 16931. */
    public record Totals(
            String currency,
            List<String> lineNets,
            String lineSum,
            String allowances,
            String charges,
            String net,
            List<Tax> breakdown,
            String tax,
            String gross,
            String prepaid,
            String rounding,
            String due) {
        static Totals of(InvoiceTotals totals) {
            return new Totals(
                    totals.gross().currency().getCode(),
                    totals.lineNets().stream().map(InvoiceAnswers::text).toList(),
                    text(totals.lineSum()),
                    text(totals.allowances()),
                    text(totals.charges()),
                    text(totals.net()),
                    totals.breakdown().stream()
                            .map(t -> new Tax(
                                    t.rate().category().name(),
                                    t.rate().rate().value().toPlainString(),
                                    text(t.taxable()),
                                    text(t.tax())))
                            .toList(),
                    text(totals.tax()),
                    text(totals.gross()),
                    text(totals.prepaid()),
                    text(totals.rounding()),
                    text(totals.due()));
        }
    }

    /**
     * An allowance or charge.
     *
     * @param  tax of one on the whole invoice: the code on a draft, category and rate on an issued invoice; absent on a
     *            line's, which is taxed like the line
     */
    public record Adjusted(
            String type,
            String amount,
            String reason,
            @Nullable String tax) {
        static Adjusted of(Adjustment adjustment) {
            return of(adjustment, null);
        }

        static Adjusted of(Adjustment adjustment, @Nullable String tax) {
            return new Adjusted(adjustment.type().name(), text(adjustment.amount()), adjustment.reason(), tax);
        }
    }

    /** An allowance or charge of a line, as it is sent. */
    public record OnLine(String amount, String reason) {
        static List<OnLine> of(List<Adjustment> adjustments, Adjustment.Type type) {
            return adjustments.stream()
                    .filter(a -> a.type() == type)
                    .map(a -> new OnLine(text(a.amount()), a.reason()))
                    .toList();
        }
    }

    /** An allowance or charge on the whole draft, as it is sent. */
    public record OnDocument(String amount, String reason, String taxCode) {
        static List<OnDocument> of(DraftContent content, Adjustment.Type type) {
            return content.adjustments().stream()
                    .filter(a -> a.adjustment().type() == type)
                    .map(a -> new OnDocument(
                            text(a.adjustment().amount()),
                            a.adjustment().reason(),
                            a.taxCode().value()))
                    .toList();
        }
    }

    /** A line of a draft, as it is sent. */
    public record ContentLine(
            String id,
            String serviceLine,
            String description,
            String quantity,
            String unit,
            String price,
            String discount,
            String baseQuantity,
            List<OnLine> allowances,
            List<OnLine> charges,
            String taxCode) {
        static ContentLine of(DraftLine line) {
            return new ContentLine(
                    line.id().toString(),
                    line.serviceLine().toString(),
                    line.description(),
                    line.quantity().value().toPlainString(),
                    line.quantity().unit().code(),
                    line.price().gross().amount().toPlainString(),
                    line.price().discount().toPlainString(),
                    line.price().gross().base().value().toPlainString(),
                    OnLine.of(line.adjustments(), Adjustment.Type.ALLOWANCE),
                    OnLine.of(line.adjustments(), Adjustment.Type.CHARGE),
                    line.taxCode().value());
        }
    }

    /** What a draft says, member by member as it is sent: put back with the version, it changes nothing. */
    public record Content(
            String serviceDate,
            String reference,
            String note,
            List<ContentLine> lines,
            List<OnDocument> allowances,
            List<OnDocument> charges,
            String prepaid,
            String rounding) {
        static Content of(DraftContent content) {
            return new Content(
                    content.serviceDate().toString(),
                    content.reference(),
                    content.note(),
                    content.lines().stream().map(ContentLine::of).toList(),
                    OnDocument.of(content, Adjustment.Type.ALLOWANCE),
                    OnDocument.of(content, Adjustment.Type.CHARGE),
                    text(content.prepaid()),
                    text(content.rounding()));
        }
    }

    private static String text(TaxRate tax) {
        return tax.category() + " " + tax.rate().value().toPlainString();
    }

    /** Amounts by how long they are past due. */
    public record Buckets(
            String current, String days1To30, String days31To60, String days61To90, String over90, String total) {
        static Buckets of(eaveside.invoicing.Aging aging) {
            return new Buckets(
                    text(aging.of(Bucket.CURRENT)),
                    text(aging.of(Bucket.DAYS_1_30)),
                    text(aging.of(Bucket.DAYS_31_60)),
                    text(aging.of(Bucket.DAYS_61_90)),
                    text(aging.of(Bucket.OVER_90)),
                    text(aging.total()));
        }
    }

    /** A customer's balances due. */
    public record CustomerAging(String customer, String customerName, Buckets aging) {}

    /** The balances due of all customers together, and of each. */
    public record Aging(Buckets all, List<CustomerAging> customers) {
        static Aging of(eaveside.invoicing.Aging all, List<ReadInvoices.CustomerAging> customers) {
            return new Aging(
                    Buckets.of(all),
                    customers.stream()
                            .map(c ->
                                    new CustomerAging(c.customer().toString(), c.customerName(), Buckets.of(c.aging())))
                            .toList());
        }
    }

    /**
     * A line.
     *
     * @param  tax         the code on a draft, category and rate on an issued invoice
     * @param  priceReason how the price of billed work came about; absent on freely written lines
     */
    public record Line(
            String id,
            String serviceLine,
            String description,
            String quantity,
            String unit,
            String price,
            String discount,
            String baseQuantity,
            List<Adjusted> adjustments,
            String tax,
            String net,
            boolean noCharge,
            @Nullable String priceReason) {}

    /**
     * A draft whole.
     *
     * @param  content all that was written, in the shape that it is sent in
     */
    public record Draft(
            String id,
            int version,
            String customer,
            @Nullable String visit,
            String serviceDate,
            String reference,
            String note,
            List<Line> lines,
            List<Adjusted> adjustments,
            Totals totals,
            Content content) {
        static Draft of(InvoiceDraft draft) {
            List<Line> lines = new ArrayList<>();
            for (int i = 0; i < draft.content().lines().size(); i++) {
                var line = draft.content().lines().get(i);
                var origin = draft.origins().get(line.id());
                lines.add(new Line(
                        line.id().toString(),
                        line.serviceLine().toString(),
                        line.description(),
                        line.quantity().value().toPlainString(),
                        line.quantity().unit().code(),
                        line.price().gross().amount().toPlainString(),
                        line.price().discount().toPlainString(),
                        line.price().gross().base().value().toPlainString(),
                        line.adjustments().stream().map(Adjusted::of).toList(),
                        line.taxCode().value(),
                        text(draft.totals().lineNets().get(i)),
                        origin != null && origin.noCharge(),
                        origin == null ? null : origin.priceReason()));
            }
            return new Draft(
                    draft.id().toString(),
                    draft.version(),
                    draft.customer().toString(),
                    draft.visit() == null ? null : draft.visit().toString(),
                    draft.content().serviceDate().toString(),
                    draft.content().reference(),
                    draft.content().note(),
                    lines,
                    draft.content().adjustments().stream()
                            .map(a -> Adjusted.of(a.adjustment(), a.taxCode().value()))
                            .toList(),
                    Totals.of(draft.totals()),
                    Content.of(draft.content()));
        }
    }

    /** A document that settled something, or took that back (below zero). */
    public record Settled(String document, String type, long number, String date, String amount) {}

    /** An issued invoice whole. */
    public record Invoice(
            String id,
            long number,
            String date,
            String dueDate,
            String serviceDate,
            String customer,
            String customerName,
            @Nullable String visit,
            String reference,
            String note,
            List<Line> lines,
            List<Adjusted> adjustments,
            Totals totals,
            String open,
            @Nullable String creditMemo,
            List<Settled> settlements) {
        static Invoice of(IssuedInvoice invoice) {
            IssuedInvoice.CreditMemo note = invoice.creditMemo();
            return new Invoice(
                    invoice.id().toString(),
                    invoice.number(),
                    invoice.date().toString(),
                    invoice.dueDate().toString(),
                    invoice.serviceDate().toString(),
                    invoice.customer().toString(),
                    invoice.customerName(),
                    invoice.visit() == null ? null : invoice.visit().toString(),
                    invoice.reference(),
                    invoice.note(),
                    invoice.lines().stream().map(Invoice::line).toList(),
                    invoice.adjustments().stream()
                            .map(a -> Adjusted.of(a.adjustment(), text(a.tax())))
                            .toList(),
                    Totals.of(invoice.totals()),
                    text(invoice.open()),
                    note == null ? null : note.id().toString(),
                    invoice.settlements().stream()
                            .map(s -> new Settled(
                                    s.document().toString(),
                                    s.type().name(),
                                    s.number(),
                                    s.date().toString(),
                                    text(s.amount())))
                            .toList());
        }

        private static Line line(IssuedInvoice.Line line) {
            var origin = line.origin();
            return new Line(
                    line.id().toString(),
                    line.serviceLine().toString(),
                    line.description(),
                    line.quantity().value().toPlainString(),
                    line.quantity().unit().code(),
                    line.price().gross().amount().toPlainString(),
                    line.price().discount().toPlainString(),
                    line.price().gross().base().value().toPlainString(),
                    line.adjustments().stream().map(Adjusted::of).toList(),
                    text(line.tax()),
                    text(line.net()),
                    origin != null && origin.noCharge(),
                    origin == null ? null : origin.priceReason());
        }
    }

    /**
     * An invoice in a list.
     *
     * @param  aging       of what is open: CURRENT, DAYS_1_30, DAYS_31_60, DAYS_61_90 or OVER_90; absent where nothing is
     * @param  daysPastDue of what is open; zero where it is current
     */
    public record Listed(
            String id,
            long number,
            String date,
            String dueDate,
            String customer,
            String customerName,
            String gross,
            String open,
            boolean credited,
            @Nullable String aging,
            long daysPastDue) {}

    /** A page of a list; {@code next} asks for the one after it. */
    public record Invoices(List<Listed> invoices, @Nullable String next) {
        static Invoices of(LocalDate today, Slice<ReadInvoices.Row> rows) {
            return new Invoices(
                    rows.rows().stream()
                            .map(r -> new Listed(
                                    r.id().toString(),
                                    r.number(),
                                    r.date().toString(),
                                    r.dueDate().toString(),
                                    r.customer().toString(),
                                    r.customerName(),
                                    text(r.gross()),
                                    text(r.open()),
                                    r.credited(),
                                    r.open().isZero()
                                            ? null
                                            : Bucket.of(r.dueDate(), today).name(),
                                    r.open().isZero() ? 0 : eaveside.invoicing.Aging.daysPastDue(r.dueDate(), today)))
                            .toList(),
                    rows.next());
        }
    }

    /** A posted document. */
    public record Document(String id, String type, long number, String date) {
        static Document of(Posted posted) {
            return new Document(
                    posted.id().toString(),
                    posted.type().name(),
                    posted.number(),
                    posted.postingDate().toString());
        }
    }

    /** How much of a payment an invoice took. */
    public record Allocated(String invoice, String amount) {}

    /** A payment in a list; below zero where money was paid back. */
    public record PaymentListed(
            String id,
            long number,
            String date,
            String customer,
            String amount,
            String method,
            String reference,
            @Nullable String reversedBy) {}

    /**
     * A page of payments; ask for more with {@code after=next}.
     *
     * @param  credit what the customer has paid and no invoice has taken; absent in everybody's list
     */
    public record Payments(
            List<PaymentListed> payments,
            @Nullable String credit,
            @Nullable String next) {
        static Payments of(Slice<ReadPayments.Row> rows, @Nullable Money credit) {
            return new Payments(
                    rows.rows().stream()
                            .map(row -> new PaymentListed(
                                    row.id().toString(),
                                    row.number(),
                                    row.date().toString(),
                                    row.customer().toString(),
                                    text(row.amount()),
                                    row.method().name(),
                                    row.reference(),
                                    row.reversedBy() == null
                                            ? null
                                            : row.reversedBy().toString()))
                            .toList(),
                    credit == null ? null : text(credit),
                    rows.next());
        }
    }

    /** A payment; below zero where money was paid back. */
    public record Payment(
            String id,
            long number,
            String date,
            String customer,
            String amount,
            String method,
            String reference,
            List<Allocated> allocations,
            String unapplied,
            @Nullable String reversedBy) {
        static Payment of(ReadPayments.View view) {
            ReadPayments.Row row = view.row();
            return new Payment(
                    row.id().toString(),
                    row.number(),
                    row.date().toString(),
                    row.customer().toString(),
                    text(row.amount()),
                    row.method().name(),
                    row.reference(),
                    view.allocations().entrySet().stream()
                            .map(e -> new Allocated(e.getKey().toString(), text(e.getValue())))
                            .toList(),
                    text(view.unapplied()),
                    row.reversedBy() == null ? null : row.reversedBy().toString());
        }
    }
}
