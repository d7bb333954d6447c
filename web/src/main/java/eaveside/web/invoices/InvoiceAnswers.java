package eaveside.web.invoices;

import eaveside.invoicing.Adjustment;
import eaveside.invoicing.InvoiceDraft;
import eaveside.invoicing.InvoiceTotals;
import eaveside.invoicing.IssuedInvoice;
import eaveside.invoicing.ReadInvoices;
import eaveside.invoicing.ReadPayments;
import eaveside.kernel.Money;
import eaveside.kernel.Slice;
import eaveside.ledger.Posted;
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

    /** An allowance or charge. */
    public record Adjusted(String kind, String amount, String reason) {
        static Adjusted of(Adjustment adjustment) {
            return new Adjusted(adjustment.kind().name(), text(adjustment.amount()), adjustment.reason());
        }
    }

    /**
     * A line.
     *
     * @param tax         the code on a draft, category and rate on an issued invoice
     * @param priceReason how the price of billed work came about; absent on freely written lines
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
            boolean goodwill,
            @Nullable String priceReason) {}

    /** A draft whole. */
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
            Totals totals) {
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
                        origin != null && origin.goodwill(),
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
                            .map(a -> Adjusted.of(a.adjustment()))
                            .toList(),
                    Totals.of(draft.totals()));
        }
    }

    /** A document that settled something, or took that back (below zero). */
    public record Settled(String document, String kind, long number, String date, String amount) {}

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
            @Nullable String creditNote,
            List<Settled> settlements) {
        static Invoice of(IssuedInvoice invoice) {
            IssuedInvoice.CreditNote note = invoice.creditNote();
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
                            .map(a -> Adjusted.of(a.adjustment()))
                            .toList(),
                    Totals.of(invoice.totals()),
                    text(invoice.open()),
                    note == null ? null : note.id().toString(),
                    invoice.settlements().stream()
                            .map(s -> new Settled(
                                    s.document().toString(),
                                    s.kind().name(),
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
                    line.tax().category() + " " + line.tax().rate().value().toPlainString(),
                    text(line.net()),
                    origin != null && origin.goodwill(),
                    origin == null ? null : origin.priceReason());
        }
    }

    /** An invoice in a list. */
    public record Listed(
            String id,
            long number,
            String date,
            String dueDate,
            String customer,
            String customerName,
            String gross,
            String open,
            boolean credited) {}

    /** A page of a list; {@code next} asks for the one after it. */
    public record Invoices(List<Listed> invoices, @Nullable String next) {
        static Invoices of(Slice<ReadInvoices.Row> rows) {
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
                                    r.credited()))
                            .toList(),
                    rows.next());
        }
    }

    /** A posted document. */
    public record Document(String id, String kind, long number, String date) {
        static Document of(Posted posted) {
            return new Document(
                    posted.id().toString(),
                    posted.kind().name(),
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
     * @param credit what the customer has paid and no invoice has taken; absent in everybody's list
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
            String unmatched,
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
                    text(view.unmatched()),
                    row.reversedBy() == null ? null : row.reversedBy().toString());
        }
    }
}
