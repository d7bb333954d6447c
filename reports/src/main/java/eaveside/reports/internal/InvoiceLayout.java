package eaveside.reports.internal;

import eaveside.kernel.Money;
import eaveside.reports.InvoicePaper;
import java.time.LocalDate;
import java.util.Locale;

/** Lays out an invoice. */
public final class InvoiceLayout {
    /** Longer references take a paragraph of their own, so that the facts stay in line. */
    private static final int SHORT_REFERENCE = 24;

    private InvoiceLayout() {}

    public static Layout of(InvoicePaper paper) {
        Words words = new Words(paper.from().locale());
        Rows rows = new Rows();
        LineRows.add(
                rows,
                paper.lines().stream()
                        .map(line -> new LineRows.Line(
                                line.serviceLine(),
                                line.description(),
                                line.detail(),
                                words.quantity(line.quantity()),
                                words.price(line.price()),
                                line.taxRate().isZero()
                                        ? words.text("tax.category." + line.taxCategory())
                                        : words.percent(line.taxRate()),
                                line.net()))
                        .toList(),
                words);
        totals(paper, words, rows);
        taxes(paper, words, rows);
        if (paper.reference().length() > SHORT_REFERENCE) {
            rows.words(words.text("reference"), paper.reference());
        }
        rows.words(words.text("terms"), paper.terms());
        rows.words(words.text("note"), paper.note());
        rows.caution(words, paper.cautions());
        return new Layout("invoice", paper.from(), words, head(paper, words), rows);
    }

    private static Head head(InvoicePaper paper, Words words) {
        String type = words.text(paper.type().name().toLowerCase(Locale.ROOT).replace('_', '-'));
        LocalDate dueDate = paper.dueDate();
        String status =
                paper.isSettled() ? words.text(paper.credited().isZero() ? "status.paid" : "status.credited") : "";
        return new Head(paper.from(), words, type, paper.number())
                .to(words.text("bill-to"), paper.billTo())
                .site(words.text("work-at"), paper.workAt())
                .fact(words.text("number"), paper.number())
                .fact(words.text("issued"), words.date(paper.issued()))
                .fact(words.text("status"), status)
                .fact(words.text("due-date"), dueDate == null || paper.isSettled() ? "" : words.date(dueDate))
                .fact(words.text("worked-on"), paper.workedOn())
                .fact(words.text("reference"), paper.reference().length() > SHORT_REFERENCE ? "" : paper.reference())
                .put("amountLabel", words.text("amount", paper.due().currency().getCode()));
    }

    private static void totals(InvoicePaper paper, Words words, Rows rows) {
        rows.block();
        if (!paper.adjustments().isEmpty()) {
            sum(rows, words, words.text("lines-total"), paper.lineTotal());
            paper.adjustments().forEach(a -> sum(rows, words, a.reason(), a.amount()));
        }
        sum(rows, words, words.text("net"), paper.net());
        sum(rows, words, words.text("tax-total"), paper.tax());
        if (!paper.gross().equals(paper.due())) {
            sum(rows, words, words.text("gross"), paper.gross());
        }
        if (!paper.paid().isZero()) {
            LocalDate asOf = paper.asOf();
            sum(
                    rows,
                    words,
                    asOf == null ? words.text("paid") : words.text("paid-by", words.date(asOf)),
                    paper.paid().negated());
        }
        if (!paper.credited().isZero()) {
            sum(rows, words, words.text("credited-in-full"), paper.credited().negated());
        }
        if (!paper.rounding().isZero()) {
            sum(rows, words, words.text("rounding"), paper.rounding());
        }
        boolean credit = paper.type() == InvoicePaper.Type.CREDIT_MEMO;
        rows.add("GRAND")
                .put("text", words.text(credit ? "credited" : paper.asOf() == null ? "due" : "balance-due"))
                .put("amount", words.withCurrency(paper.due()));
    }

    private static void sum(Rows rows, Words words, String text, Money amount) {
        rows.add("SUM").put("text", text).put("amount", words.amount(amount));
    }

    private static void taxes(InvoicePaper paper, Words words, Rows rows) {
        rows.block().add("TAX_HEAD");
        for (InvoicePaper.Tax tax : paper.taxes()) {
            String category = words.text("tax.category." + tax.category()) + " (" + tax.category() + ")";
            rows.add("TAX")
                    .put("text", tax.exemption().isBlank() ? category : category + ": " + tax.exemption())
                    .put("tax", words.percent(tax.rate()))
                    .put("price", words.amount(tax.taxable()))
                    .put("amount", words.amount(tax.amount()));
        }
    }
}
